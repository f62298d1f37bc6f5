namespace PartsSignal.Analysis.Sql;

/// <summary>The last day that a store speaks for. Its one definition is <c>intermediate/int_log_window.sql</c>.</summary>
public static class LogWindow
{
    /// <summary>The shop's own day, else the day of the newest call; null if there is neither.</summary>
    /// <param name="database">A session over the store.</param>
    /// <param name="asOf">The shop's own day, or null to go by the log.</param>
    public static DateOnly? LastDay(Database database, DateOnly? asOf)
    {
        if (asOf is not null)
        {
            return asOf;
        }

        ResultRunner.Prepare(database, null, "int_log_window");
        return database.ReadTable<Window>("int_log_window").SingleOrDefault()?.LastDay;
    }

    private sealed record Window(DateOnly LastDay);
}
