using PartsSignal.SampleShop.Chance;

namespace PartsSignal.SampleShop.Dialects;

/// <summary>
/// Writes an invented shop's files in an office dialect of its own: <c>in/</c> holds the files, <c>truth.json</c> the right
/// reading of them. Any seed gives a dialect, the same seed the same bytes in every locale.
/// </summary>
public static class DialectMaker
{
    /// <returns>One line that says what the dialect is like.</returns>
    public static string Write(long seed, string folder)
    {
        string files = Path.Combine(folder, "in");
        Directory.CreateDirectory(files);
        Dialect dialect = DialectPicker.Pick(seed);
        var shop = new ShopHistory(seed, dialect);
        var names = new HeaderNames(dialect, Dice.For(seed, "headers"));
        IReadOnlyList<TableDraft> log = DialectTables.Log(dialect, shop, names, seed, out JobTables jobs);
        IReadOnlyList<TableDraft> rest = DialectTables.Rest(dialect, shop, jobs, names, seed);
        IReadOnlyList<PlacedTable> placed = new DialectFolder(dialect, seed, files).Write(log, rest);
        DialectTruth.Write(Path.Combine(folder, "truth.json"), seed, dialect, shop, placed);
        return dialect.Summary;
    }
}
