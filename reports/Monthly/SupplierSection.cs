using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>How suppliers' parts hold up, and how long they take.</summary>
/// <param name="Quality">By supplier and component, worst first.</param>
/// <param name="LeadTimes">By supplier.</param>
/// <param name="WatchDays">Days within which a part that fails again counts as an early failure.</param>
internal sealed record SupplierFacts(IReadOnlyList<SupplierQuality> Quality, IReadOnlyList<SupplierLeadTime> LeadTimes, int WatchDays);

/// <summary>Parts of one component from one supplier.</summary>
/// <param name="Supplier">The supplier.</param>
/// <param name="Component">The component.</param>
/// <param name="Followed">Parts fitted and watched.</param>
/// <param name="Failed">Those replaced again within the window on the same unit.</param>
/// <param name="FailedShare">Their share.</param>
/// <param name="OthersShare">The same share for all other suppliers, or null if there is no other.</param>
/// <param name="OthersFollowed">Parts of all other suppliers fitted and watched, or null if there is no other.</param>
/// <param name="StandsOut">True if worse than the others beyond chance.</param>
internal sealed record SupplierQuality(string Supplier, string Component, long Followed, long Failed, Estimate FailedShare, double? OthersShare, long? OthersFollowed, bool StandsOut)
{
    /// <summary>Supplier and component in words.</summary>
    public string Name => $"{Supplier} {Format.Words(Component)}";
}

/// <summary>How long orders took.</summary>
/// <param name="Supplier">The supplier.</param>
/// <param name="Received">Order lines received.</param>
/// <param name="Waiting">Order lines not received yet.</param>
/// <param name="MedianDays">Half were received within so many days.</param>
/// <param name="NinetyPercentDays">Nine in ten were received within so many days; null if too few.</param>
/// <param name="ReturnShare">Share of pieces sent back.</param>
internal sealed record SupplierLeadTime(string Supplier, long Received, long Waiting, Estimate MedianDays, double? NinetyPercentDays, Estimate ReturnShare);

/// <summary>Supplier quality and lead times.</summary>
internal static class SupplierSection
{
    private const int WatchDays = 90;
    private const int RowsDrawn = 14;
    private const int RowsOnPage = 15;

    /// <summary>Supplier quality and lead times; null if they were not computed.</summary>
    public static SupplierFacts? Read(Database database) => !database.Has("supplier_quality") || !database.Has("lead_times") ? null : new SupplierFacts(
        database.Read<SupplierQuality>("queries/report/supplier_quality.sql"), database.Read<SupplierLeadTime>("queries/report/lead_times.sql"), WatchDays);

    /// <param name="facts">What is known, or null if there are no orders or suppliers were not compared.</param>
    public static Section Build(SupplierFacts? facts) => new("suppliers", "Suppliers: quality and lead times", [.. Blocks(facts)]);

    private static IEnumerable<IBlock> Blocks(SupplierFacts? facts)
    {
        if (facts is null || facts.Quality.Count == 0 && facts.LeadTimes.Count == 0)
        {
            yield return new Missing("No parts orders are in the files, so the quality and lead times of suppliers are not known. Add the suppliers' order exports to your files.");
            yield break;
        }

        if (facts.Quality.Count == 0)
        {
            yield return new Missing("Quality by supplier is not known: no fitted part can be traced to the order it came from.");
        }
        else
        {
            yield return Dots(facts);
            yield return TableView.Create("supplier-quality", "Parts that failed again early", Basis(facts), facts.Quality,
                [
                    new("Supplier", q => q.Supplier), new("Component", q => Format.Words(q.Component)), new("Fitted", q => q.Followed, CellKind.Count),
                    new("Failed early", q => q.Failed, CellKind.Count), new("Share (95 %)", q => q.FailedShare, CellKind.Share), new("Other suppliers", q => q.OthersShare, CellKind.Share),
                    new("Fitted of theirs", q => q.OthersFollowed, CellKind.Count),
                ]) with
            {
                RowsOnPage = RowsOnPage,
            };
        }

        yield return TableView.Create("lead-times", "Lead times", "Order lines, from the day ordered to the day received; all months up to the day of the data.", facts.LeadTimes,
            [
                new("Supplier", l => l.Supplier), new("Lines received", l => l.Received, CellKind.Count), new("Waiting", l => l.Waiting, CellKind.Count),
                new("Half within, days", l => l.MedianDays.Value, CellKind.Days), new("Range (95 %)", l => Range(l.MedianDays)), new("Nine in ten within, days", l => l.NinetyPercentDays, CellKind.Days),
                new("Sent back (95 %)", l => l.ReturnShare, CellKind.Share),
            ]) with
        {
            WhenEmpty = "No order line says when it was received.",
        };
    }

    private static string? Range(Estimate days) => (days.Lower, days.Upper) switch
    {
        ({ } low, { } high) => $"{Format.Tick(low)}\u2013{Format.Tick(high)}",
        ({ } low, null) => $"from {Format.Tick(low)}",
        _ => null,
    };

    private static IntervalDots Dots(SupplierFacts facts)
    {
        SupplierQuality[] rows = [.. facts.Quality.Take(RowsDrawn)];
        string[] loud = [.. facts.Quality.Where(q => q.StandsOut).Select(q => q.Name)];
        string conclusion = loud.Length == 0
            ? "No supplier's parts fail early more often than the others' beyond chance."
            : $"Fails early more often than the same part from elsewhere: {string.Join("; ", loud)}.";
        return new IntervalDots(
            new ChartText("supplier-quality", $"Share of fitted parts replaced again within {facts.WatchDays} days", conclusion, Basis(facts),
                string.Join("; ", rows.Select(r => $"{r.Name} {Format.Share(r.FailedShare)}")) + "."),
            "replaced again, % of parts fitted", Percent: true,
            [.. rows.Select(r => new IntervalRow(r.Name, r.FailedShare, $"{Format.Count(r.Failed)} of {Format.Count(r.Followed)}", r.StandsOut, r.OthersShare))],
            CompareName: rows.Any(r => r.OthersShare is not null) ? "other suppliers" : null);
    }

    private static string Basis(SupplierFacts facts) =>
        $"{Format.Count(facts.Quality.Sum(q => q.Followed))} parts whose supplier is known, watched for {facts.WatchDays} days on the same unit.";
}
