using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>Top components and families, each with its interval.</summary>
public static class FailureSection
{
    private const int RowsShown = 12;
    private const int RowsOnPage = 15;

    /// <summary>Puts the section together.</summary>
    /// <param name="facts">What is known; null: rates were not computed.</param>
    public static Section Build(FailureFacts? facts) => new("failures", "What fails most", [.. Blocks(facts)]);

    private static IEnumerable<IBlock> Blocks(FailureFacts? facts)
    {
        if (facts is null || facts.Components.Count == 0 && facts.Families.Count == 0)
        {
            yield return new Missing("No call of this period has a known cause or family, so nothing can be ranked. It needs closed jobs with the part fitted or a note that none was needed.");
            yield break;
        }

        if (facts.Components.Count > 0)
        {
            yield return Dots(facts);
            yield return Components(facts);
        }

        yield return Families(facts);
        if (facts.Rates.Count == 0)
        {
            yield return new Missing("Failure rates by age are not shown: no register lists units whether they fail or not, so there are no unit-years to divide by. Shares of calls say what is repaired most, not what fails soonest.");
        }
        else
        {
            yield return new SubHeading("Rates by age on the register");
            yield return new SideBySide([.. facts.Rates.Select(Rate)]);
        }
    }

    private static IntervalDots Dots(FailureFacts facts)
    {
        ShareRow[] rows = [.. facts.Components.Take(RowsShown)];
        ShareRow top = rows[0];
        string conclusion = top.Share.Value is null
            ? "Too few calls to rank components."
            : $"{Capital(Format.Words(top.Name))} leads with {Format.Share(top.Share)} of calls; where two intervals overlap widely, their order may be chance.";
        return new IntervalDots(
            new ChartText("components", "Share of calls by component at fault", conclusion, Basis(facts, top.Of),
                string.Join("; ", rows.Select(r => $"{Format.Words(r.Name)} {Format.Share(r.Share)}")) + "."),
            "share of calls with a known cause, %", Percent: true,
            [.. rows.Select(r => new IntervalRow(Format.Words(r.Name), r.Share, $"{Format.Count(r.Calls)} of {Format.Count(r.Of)}", Compare: r.YearAgo))],
            CompareName: rows.Any(r => r.YearAgo is not null) ? "same month a year earlier" : null);
    }

    private static TableView Components(FailureFacts facts) => new(
        "components", "Components at fault", Basis(facts, facts.Components[0].Of),
        [new("Component"), new("Calls", CellKind.Count), new("Share (95 %)", CellKind.Share), new("Month before", CellKind.Share), new("Year earlier", CellKind.Share)],
        [.. facts.Components.Select(c => (IReadOnlyList<object?>)[Format.Words(c.Name), c.Calls, c.Share, c.Before, c.YearAgo])],
        RowsOnPage: RowsOnPage);

    private static TableView Families(FailureFacts facts) => new(
        "families", "Model families", $"{facts.Period}; share of all calls of a known family. Last column: all months; how many times the share of calls that the ages of the family lead to expect.",
        [new("Family"), new("Type"), new("Brand"), new("Calls", CellKind.Count), new("Share of calls (95 %)", CellKind.Share), new("Most often at fault"), new("More than its ages explain")],
        [.. facts.Families.Select(f => (IReadOnlyList<object?>)[f.Family, f.ApplianceType, f.Brand, f.Calls, f.Share, f.TopComponent is null ? null : Format.Words(f.TopComponent), f.StandsOut])],
        "No call of this period has a known model family.");

    private static BandRates Rate(BandSeries series, int i)
    {
        BandRate[] known = [.. series.Bands.Where(b => b.Rate.Value is not null)];
        BandRate? worst = known.MaxBy(b => b.Rate.Value);
        string conclusion = worst is null
            ? "Too few unit-years at any age."
            : $"Most failures per unit-year at {worst.Band} years: {Format.Estimate(worst.Rate)} per 100 unit-years.";
        return new BandRates(
            new ChartText($"band-rates-{i + 1}", $"{Capital(series.Name)} failures by age", conclusion, series.Basis,
                string.Join("; ", series.Bands.Select(b => $"{b.Band} years {Format.Estimate(b.Rate)}")) + "."),
            "age of the appliance, years", "failures per 100 unit-years", series.Bands);
    }

    private static string Basis(FailureFacts facts, long of) => $"{facts.Period}; {Format.Count(of)} calls with a known cause.";

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
