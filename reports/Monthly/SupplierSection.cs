using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>Supplier quality and lead times.</summary>
public static class SupplierSection
{
    private const int RowsShown = 14;

    /// <summary>Puts the section together.</summary>
    /// <param name="facts">What is known; null: there are no orders, or suppliers were not compared.</param>
    public static Section Build(SupplierFacts? facts) => new("suppliers", "Suppliers: quality and lead times", [.. Blocks(facts)]);

    private static IEnumerable<IBlock> Blocks(SupplierFacts? facts)
    {
        if (facts is null || facts.Quality.Count == 0 && facts.LeadTimes.Count == 0)
        {
            yield return new Missing("No parts orders are in the files, so neither quality nor lead times of suppliers can be told. Add the suppliers' order exports to shop.json.");
            yield break;
        }

        if (facts.Quality.Count == 0)
        {
            yield return new Missing("Quality by supplier cannot be told: no fitted part can be traced to the order it came from.");
        }
        else
        {
            yield return Dots(facts);
            yield return new TableView("supplier-quality", "Parts that failed again early", Basis(facts),
                [new("Supplier"), new("Component"), new("Fitted", CellKind.Count), new("Failed early", CellKind.Count), new("Share (95 %)", CellKind.Share), new("Other suppliers", CellKind.Share)],
                [.. facts.Quality.Select(q => (IReadOnlyList<object?>)[q.Supplier, Format.Words(q.Component), q.Fitted, q.FailedEarly, q.Share, q.Others])],
                RowsOnPage: 15);
        }

        yield return new TableView("lead-times", "Lead times", "Order lines, from the day ordered to the day received; all months up to the day of the data.",
            [new("Supplier"), new("Lines received", CellKind.Count), new("Waiting", CellKind.Count), new("Half within, days", CellKind.Number), new("Nine in ten within, days", CellKind.Number), new("Sent back (95 %)", CellKind.Share)],
            [.. facts.LeadTimes.Select(l => (IReadOnlyList<object?>)[l.Supplier, l.Lines, l.Waiting, l.MedianDays, l.NinetyDays, l.Returned])],
            "No order line says when it was received.");
    }

    private static IntervalDots Dots(SupplierFacts facts)
    {
        SupplierQuality[] rows = [.. facts.Quality.Take(RowsShown)];
        string[] loud = [.. facts.Quality.Where(q => q.StandsOut).Select(Name)];
        string conclusion = loud.Length == 0
            ? "No supplier's parts fail early more often than the others' beyond chance."
            : $"Fails early more often than the same part from elsewhere: {string.Join("; ", loud)}.";
        return new IntervalDots(
            new ChartText("supplier-quality", $"Share of fitted parts replaced again within {facts.WatchDays} days", conclusion, Basis(facts),
                string.Join("; ", rows.Select(r => $"{Name(r)} {Format.Share(r.Share)}")) + "."),
            "replaced again, % of parts fitted", Percent: true,
            [.. rows.Select(r => new IntervalRow(Name(r), r.Share, $"{Format.Count(r.FailedEarly)} of {Format.Count(r.Fitted)}", r.StandsOut, r.Others))],
            CompareName: rows.Any(r => r.Others is not null) ? "other suppliers" : null);
    }

    private static string Name(SupplierQuality row) => $"{row.Supplier} {Format.Words(row.Component)}";

    private static string Basis(SupplierFacts facts) =>
        $"{Format.Count(facts.Quality.Sum(q => q.Fitted))} parts whose supplier is known, watched for {facts.WatchDays} days on the same unit.";
}
