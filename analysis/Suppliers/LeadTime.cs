using PartsSignal.Analysis.AgeCurves;
using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.Suppliers;

/// <summary>How long deliveries take. Lines still waiting count as waiting at least so long, not as never ordered.</summary>
/// <param name="Supplier">Supplier.</param>
/// <param name="Grouping">all, component, or quarter (first day of the quarter ordered).</param>
/// <param name="Member">Which one.</param>
/// <param name="Lines">Order lines.</param>
/// <param name="Waiting">Of them not received yet.</param>
/// <param name="MedianDays">Days by which half had arrived, or null if missing (see Missing).</param>
/// <param name="MedianLower">Lower end of its 95 % interval.</param>
/// <param name="MedianUpper">Upper end, or null if open.</param>
/// <param name="NinetyPercentDays">Days by which nine in ten had arrived, or null if too many are still waiting, or too few lines.</param>
/// <param name="Missing">Why there is no median; null when there is one.</param>
public sealed record LeadTime(
    string Supplier, string Grouping, string Member, long Lines, long Waiting, double? MedianDays, double? MedianLower, double? MedianUpper, double? NinetyPercentDays, string? Missing)
{
    /// <summary>Fewest lines a lead time is given for.</summary>
    public const int FewestLines = 10;

    /// <summary>All suppliers and groups in a session where the supplier tables were built.</summary>
    public static IReadOnlyList<LeadTime> Table(Database database) => [.. database.ReadTable<LeadDays>("lead_days")
        .GroupBy(r => (r.Supplier, r.Grouping, r.Member))
        .Select(g => Of(g.Key, [.. g.Select(r => (r.Days, r.Arrived, r.Lines))]))];

    private sealed record LeadDays(string Supplier, [Column("grouping_kind")] string Grouping, string Member, int Days, bool Arrived, long Lines);

    private static LeadTime Of((string Supplier, string Grouping, string Member) group, IReadOnlyList<(int Days, bool Arrived, long Lines)> waits)
    {
        long lines = waits.Sum(w => w.Lines), waiting = waits.Where(w => !w.Arrived).Sum(w => w.Lines);
        if (lines < FewestLines)
        {
            return new LeadTime(
                group.Supplier, group.Grouping, group.Member, lines, waiting, null, null, null, null, $"too few: {lines} of {FewestLines} order lines");
        }

        KaplanMeier curve = KaplanMeier.Estimate(Ledger(waits, lines));
        LifeQuantile median = LifeQuantile.Median(curve), ninety = LifeQuantile.From(curve, 0.1);
        return new LeadTime(
            group.Supplier, group.Grouping, group.Member, lines, waiting, Days(median.Age), Days(median.Lower), Days(median.Upper), Days(ninety.Age), median.Missing);
    }

    // A curve's ages lie above 0, so a part that came the same day has age 1 in it.
    private static AgeLedger Ledger(IReadOnlyList<(int Days, bool Arrived, long Lines)> waits, long lines) => AgeLedger.FromCounts(
    [
        new AgeLedgerRow(0, lines, 0, 0),
        .. waits.GroupBy(w => w.Days).OrderBy(g => g.Key)
            .Select(g => new AgeLedgerRow(g.Key + 1, 0, g.Sum(w => w.Lines), g.Where(w => w.Arrived).Sum(w => w.Lines))),
    ]);

    private static double? Days(double? age) => age - 1;
}
