using System.Globalization;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Intervals;
using PartsSignal.Analysis.Vocabulary;
using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>Which components and families fail, in shares of calls and, where a register gives unit-years, as rates.</summary>
/// <param name="Components">Components by calls of the month, or of twelve months where the month knows too few causes; most first.</param>
/// <param name="Families">Families by calls in the period, most first.</param>
/// <param name="Rates">Rates by age band of the components with most failures; empty if there is no register.</param>
/// <param name="Period">The period the shares cover, in words.</param>
/// <param name="Machines">Whose machines the rates speak of.</param>
internal sealed record FailureFacts(
    IReadOnlyList<ComponentShare> Components, IReadOnlyList<FamilyShare> Families, IReadOnlyList<BandSeries> Rates, string Period, RegisterMachines Machines)
{
    /// <summary>The twelve months that <see cref="Components"/> cover, in words, or null where they are of the month.</summary>
    public string? TwelveMonths { get; init; }
}

/// <summary>One component's share of the calls of a month, or of twelve months.</summary>
/// <param name="Need">The component.</param>
/// <param name="Calls">Calls it was at fault in.</param>
/// <param name="CauseKnown">Calls whose cause is known.</param>
/// <param name="Share">Its share of those.</param>
/// <param name="ShareBefore">Its share in the month before, or null if not known or of twelve months.</param>
/// <param name="ShareYearAgo">Its share in the same month or months a year earlier, or null if not known.</param>
internal sealed record ComponentShare(string Need, long Calls, long CauseKnown, Estimate Share, double? ShareBefore, double? ShareYearAgo);

/// <summary>One family's share of the calls.</summary>
/// <param name="ModelFamily">The family.</param>
/// <param name="ApplianceType">Its type.</param>
/// <param name="Brand">Its brand.</param>
/// <param name="Calls">Its calls in the period.</param>
/// <param name="Share">Its share of all calls.</param>
/// <param name="TopComponent">The component most often at fault, or null if not known.</param>
internal sealed record FamilyShare(string ModelFamily, string? ApplianceType, string? Brand, long Calls, Estimate Share, string? TopComponent)
{
    /// <summary>Components it needs more often than its ages explain, in words; empty if none.</summary>
    public string StandsOut { get; init; } = "";
}

/// <summary>Rates of one component by age band.</summary>
/// <param name="Name">What fails.</param>
/// <param name="Basis">Whose unit-years, and how many.</param>
/// <param name="Bands">The bands, youngest first.</param>
internal sealed record BandSeries(string Name, string Basis, IReadOnlyList<BandRate> Bands);

/// <summary>Top components and families, each with its interval.</summary>
internal static class FailureSection
{
    private const int RowsDrawn = 12;
    private const int RowsOnPage = 15;

    // Causes known below which a month is too small to rank: twelve months are shown instead.
    private const int FewCauses = 10;

    private sealed record FamilyRow(string ModelFamily, string? ApplianceType, string? Brand, long Calls, Estimate Share, string? TopComponent);

    private sealed record YearNeed(string Need, long Calls, long CauseKnown, double? ShareYearAgo);

    private sealed record Excess(string ModelFamily, string Component, double Ratio);

    private sealed record Band(string ApplianceType, string Component, string AgeBand, long Events, double Exposure, Estimate Estimate, long Failures, double UnitYears);

    /// <summary>Components and families of the month, and rates by age on the register; null if they were not computed.</summary>
    public static FailureFacts? Read(Database database, DateOnly month)
    {
        if (!database.Has("month_needs"))
        {
            return null;
        }

        IReadOnlyList<Excess> excess = database.Has("family_comparison") ? database.Read<Excess>("queries/report/family_stands_out.sql") : [];
        ILookup<string, string> standsOut = excess.ToLookup(
            e => e.ModelFamily, e => string.Create(CultureInfo.InvariantCulture, $"{Format.Words(e.Component)} {e.Ratio:0.0} times"));
        IReadOnlyList<ComponentShare> ofMonth = database.Read<ComponentShare>("queries/report/month_needs.sql", ("month", month));
        IReadOnlyList<ComponentShare> ofYear = ofMonth is [{ CauseKnown: >= FewCauses }, ..] ? [] : Year(database, month);
        return new FailureFacts(
            ofYear.Count > 0 ? ofYear : ofMonth,
            [.. database.Read<FamilyRow>("queries/report/month_families.sql", ("month", month)).Select(f =>
                new FamilyShare(f.ModelFamily, f.ApplianceType, f.Brand, f.Calls, f.Share, f.TopComponent) { StandsOut = string.Join("; ", standsOut[f.ModelFamily].Distinct()) })],
            Rates(database), $"Calls of {Format.Month(month)}", RegisterMachines.Read(database))
        {
            TwelveMonths = ofYear.Count > 0 ? $"Calls of {Format.Month(month.AddMonths(-11))} to {Format.Month(month)}" : null,
        };
    }

    private static IReadOnlyList<ComponentShare> Year(Database database, DateOnly month) =>
        [.. database.Read<YearNeed>("queries/report/year_needs.sql", ("month", month))
            .Select(n => new ComponentShare(n.Need, n.Calls, n.CauseKnown, Proportion.Wilson(n.Calls, n.CauseKnown), null, n.ShareYearAgo))];

    private static IReadOnlyList<BandSeries> Rates(Database database)
    {
        UntoldFailures untold = UntoldFailures.Read(database);
        return !database.Has("failure_rates") ? [] :
        [.. database.Read<Band>("queries/report/band_rates.sql")
            .GroupBy(b => (b.ApplianceType, b.Component))
            .Select(g => new BandSeries(
                $"{Format.Words(g.Key.ApplianceType)} {Format.Words(g.Key.Component)}",
                $"{Format.Count(g.First().Failures)} failures in {Format.Number(g.First().UnitYears)} machine-years on the register, all months up to the day of the data.{untold.Describe(g.Key.ApplianceType, g.Key.Component)}",
                [.. g.Select(b => new BandRate(b.AgeBand, b.Estimate, b.Events, b.Exposure))]))];
    }

    /// <param name="facts">What is known, or null if rates were not computed.</param>
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
            if (facts.TwelveMonths is not null)
            {
                yield return new Paragraph("The month has too few calls with a known cause to rank parts, so the last twelve months are shown.");
            }

            // A handful of calls says nothing that its table does not.
            if (facts.Components[0].CauseKnown >= FewCauses)
            {
                yield return Dots(facts);
            }

            yield return Components(facts);
        }

        yield return Families(facts);
        if (facts.Rates.Count == 0)
        {
            yield return new Missing("Failure rates by age are not shown. They need a register: a list of machines with their build or purchase dates, whether they failed or not. Shares of calls say what is repaired most, not what fails soonest.");
        }
        else if (facts.Machines.IsMixed)
        {
            yield return new Missing($"Failure rates by age are not shown. {facts.Machines.Scope} {RegisterMachines.OneKind}");
        }
        else
        {
            yield return new SubHeading($"Failure rates by age: {facts.Machines.Name}");
            yield return new Paragraph($"A failure is a repair with the callbacks that belong to it, counted once. {MachineAge.Words} {facts.Machines.Scope}");
            yield return new SideBySide([.. facts.Rates.Select(Rate)]);
        }
    }

    private static IntervalDots Dots(FailureFacts facts)
    {
        ComponentShare[] rows = [.. facts.Components.Take(RowsDrawn)];
        ComponentShare top = rows[0];
        string conclusion = top.Share.Value is null
            ? "Too few calls to rank parts."
            : rows.Count(r => r.Calls == top.Calls) is > 1 and var tied ? $"No part leads: {tied} parts were at fault in {Format.Count(top.Calls)} calls each."
            : $"{Format.Capital(Format.Words(top.Need))} leads with {Format.Share(top.Share)} of calls. Where two ranges overlap widely, their order may be chance.";
        return new IntervalDots(
            new ChartText("components", "Share of calls by component at fault", conclusion, Basis(facts, top.CauseKnown),
                string.Join("; ", rows.Select(r => $"{Format.Words(r.Need)} {Format.Share(r.Share)}")) + "."),
            "share of calls with a known cause, %", Percent: true,
            [.. rows.Select(r => new IntervalRow(Format.Words(r.Need), r.Share, $"{Format.Count(r.Calls)} of {Format.Count(r.CauseKnown)}", Compare: r.ShareYearAgo))],
            CompareName: rows.Any(r => r.ShareYearAgo is not null) ? facts.TwelveMonths is null ? "same month a year earlier" : "the twelve months before" : null);
    }

    private static TableView Components(FailureFacts facts) => TableView.Create(
        "components", "Components at fault", Basis(facts, facts.Components[0].CauseKnown), facts.Components,
        [
            new("Component", c => Format.Words(c.Need)), new("Calls", c => c.Calls, CellKind.Count), new("Share (95 %)", c => c.Share, CellKind.Share),
            .. facts.TwelveMonths is null ? [new RecordColumn<ComponentShare>("Month before", c => c.ShareBefore, CellKind.Share)] : Array.Empty<RecordColumn<ComponentShare>>(),
            new(facts.TwelveMonths is null ? "Year earlier" : "Twelve months before", c => c.ShareYearAgo, CellKind.Share),
        ]) with
    {
        RowsOnPage = RowsOnPage,
    };

    private static TableView Families(FailureFacts facts) => TableView.Create(
        "families", "Model families", $"{facts.Period}; share of all calls of a known family. Last column: all months; how many times the share of calls that the ages of the family lead to expect. About one in ten named there may be chance, and the largest look larger than they are.",
        facts.Families,
        [
            new("Family", f => f.ModelFamily), new("Type", f => f.ApplianceType), new("Brand", f => f.Brand), new("Calls", f => f.Calls, CellKind.Count),
            new("Share of calls (95 %)", f => f.Share, CellKind.Share), new("Most often at fault", f => f.TopComponent is null ? null : Format.Words(f.TopComponent)),
            new("More than its ages explain", f => f.StandsOut),
        ]) with
    {
        WhenEmpty = "No call of this period has a known model family.",
    };

    private static BandRates Rate(BandSeries series, int i)
    {
        return new BandRates(
            new ChartText($"band-rates-{i + 1}", $"{Format.Capital(series.Name)} failures by age", AgePattern.Describe(series.Bands), series.Basis,
                string.Join("; ", series.Bands.Select(b => $"{b.Band} years {Format.Estimate(b.Rate)}")) + "."),
            "age of the appliance, years", "failures per 100 unit-years", series.Bands);
    }

    private static string Basis(FailureFacts facts, long of) => $"{facts.TwelveMonths ?? facts.Period}; {Format.Count(of)} {(of == 1 ? "call" : "calls")} with a known cause.";
}
