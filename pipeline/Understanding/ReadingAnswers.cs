namespace PartsSignal.Pipeline.Understanding;

/// <summary>
/// What a person has settled about the shop's tables: <c>jobs.csv/kind</c>, <c>jobs.csv/field/closed_on</c>,
/// <c>jobs.csv/column/Done</c>, <c>jobs.csv/link/Machine</c>, <c>jobs.csv/dates</c>, <c>jobs.csv/numbers</c>; in a workbook <c>shop.xlsx|Calls/kind</c>.
/// </summary>
/// <param name="Given">Key of the question to the choice.</param>
internal sealed record ReadingAnswers(IReadOnlyDictionary<string, string> Given)
{
    /// <summary>The choice that no column gives a field, or a column no field.</summary>
    public const string Nothing = "none";

    /// <summary>Key of a table.</summary>
    public static string KeyOf(TableSample table) => table.Sheet is null ? table.File : $"{table.File}|{table.Sheet}";

    /// <summary>The kind of a table; null: nobody said.</summary>
    public string? Kind(string table) => Given.GetValueOrDefault(table + "/kind");

    /// <summary>The header of the column that gives a field.</summary>
    public string? Header(string table, string field) => Given.GetValueOrDefault($"{table}/field/{field}");

    /// <summary>The field that a column gives.</summary>
    public string? Field(string table, string header) => Given.GetValueOrDefault($"{table}/column/{header}");

    /// <summary>The column of another table that a column points to; <see cref="Nothing"/>: none.</summary>
    public string? Link(string table, string header) => Given.GetValueOrDefault($"{table}/link/{header}");

    /// <summary>The order of the dates: dmy, mdy or ymd.</summary>
    public string? Dates(string table) => Given.GetValueOrDefault(table + "/dates");

    /// <summary>The decimal mark of the amounts: point or comma.</summary>
    public string? Numbers(string table) => Given.GetValueOrDefault(table + "/numbers");
}
