using PartsSignal.Analysis.Rates;
using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>Says what rates by age show: a peak only where it can be told from its neighbors, else the trend.</summary>
internal static class AgePattern
{
    public static string Describe(IReadOnlyList<BandRate> bands)
    {
        BandRate[] known = [.. bands.Where(b => b.Rate.Value is not null && b.Exposure > 0)];
        if (known.Length == 0)
        {
            return "Too few machine-years at any age.";
        }

        (AgePatternKind kind, int at) = AgeContrast.Find([.. known.Select(b => new BandCount(b.Events, b.Exposure))]);
        return kind switch
        {
            AgePatternKind.Peak => $"Fails most at {known[at].Band} years: {Format.Estimate(known[at].Rate)} failures per 100 machine-years.",
            AgePatternKind.Rises => "Fails more often as it gets older.",
            AgePatternKind.Falls => "Fails more often when young.",
            _ => "No age stands out: the differences between the bars may be chance.",
        };
    }
}
