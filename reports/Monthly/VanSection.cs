using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Components;
using PartsInWords = PartsSignal.Analysis.VanPlan.PartsInWords;
using VanStandIn = PartsSignal.Analysis.VanPlan.VanStandIn;

namespace PartsSignal.Reports.Monthly;

/// <summary>The plan for the vans, and how it did on months it had not seen.</summary>
/// <param name="Vans">One plan a van.</param>
/// <param name="Replay">How the replay compared the plans, in words, or null if there was no replay.</param>
/// <param name="ReplayRows">What each way of stocking would have finished.</param>
/// <param name="Curves">Share finished against money, per way of stocking; empty if not computed.</param>
/// <param name="CurveBasis">What the curves count.</param>
/// <param name="Budget">Today's money per van, or null if not set.</param>
internal sealed record VanFacts(
    IReadOnlyList<VanPlanView> Vans, string? Replay, IReadOnlyList<ReplayedPolicy> ReplayRows, IReadOnlyList<Curve> Curves, string CurveBasis, double? Budget)
{
    /// <summary>Money tied up now and with the plans, in words; null: no van was counted.</summary>
    public string? Capital { get; init; }

    /// <summary>Which van jobs count for where the shop's files do not tell; null: they do.</summary>
    public VanStandIn? StandIn { get; init; }

    /// <summary>How part numbers are known where jobs name parts in words; null: they do not.</summary>
    public PartsInWords? Words { get; init; }

    /// <summary>The heading of what is planned.</summary>
    public string Heading(string van) => VanStandIn.Heading(van, StandIn);
}

/// <summary>The plan of one van.</summary>
/// <param name="Van">The van.</param>
/// <param name="Summary">What the plan costs and brings, in words.</param>
/// <param name="Counted">True if the van was counted, so that the plan says what to add and take off; otherwise it lists the whole load.</param>
/// <param name="Lines">The lines.</param>
internal sealed record VanPlanView(string Van, string Summary, bool Counted, IReadOnlyList<VanLine> Lines);

/// <summary>One part on the plan of a van.</summary>
/// <param name="Van">The van.</param>
/// <param name="Todo">What to do, in words: add 2, keep 1, send back 1.</param>
/// <param name="PartNumber">Current part number.</param>
/// <param name="Description">What it is.</param>
/// <param name="OnHand">Pieces counted.</param>
/// <param name="Target">Pieces planned.</param>
/// <param name="Price">Price of one, or null if not known.</param>
/// <param name="PiecesPerYear">Pieces this van is expected to use a year, or null if not on the plan.</param>
/// <param name="JobsPerYear">Jobs a year that could not be finished at the first visit without it, or null if not on the plan.</param>
internal sealed record VanLine(
    string Van, string Todo, string PartNumber, string? Description, long OnHand, long Target, decimal? Price, double? PiecesPerYear, double? JobsPerYear);

/// <summary>One way of stocking, replayed.</summary>
internal sealed record ReplayedPolicy(string Way, long Jobs, Estimate Finished, decimal? Money);

/// <summary>What each van should carry, with the evidence.</summary>
internal static class VanSection
{
    // The whole list is the van's pick list and a sheet of the workbook; the page shows what matters most.
    private const int RowsOnPage = 40;
    private const string Refused = "No plan: ";

    // The share in the job log is another figure, and a reader would compare the two.
    private const string FirstVisitMeans =
        "In this section, a job counts as finished at the first visit only if every part it needed was on the van. The share in your job log can be higher: a part may have been brought for the call, or fetched the same day.";

    /// <param name="facts">What is known, or null if no plan was made.</param>
    /// <param name="currency">The shop's currency.</param>
    public static Section Build(VanFacts? facts, string currency) => new("vans", "What each van should carry", [.. Blocks(facts, currency)]);

    private static IEnumerable<IBlock> Blocks(VanFacts? facts, string currency)
    {
        if (facts is null || facts.Vans.Count == 0)
        {
            yield return new Missing("No van plan was made. It takes closed jobs with their part numbers, parts with prices, and jobs that count for a van: name your vans in the settings, and who drives them.");
            yield break;
        }

        if (facts.StandIn is { } standIn)
        {
            yield return new Paragraph(standIn.Sentence);
        }

        if (facts.Words is { } words)
        {
            yield return new Paragraph(words.Sentence);
        }

        yield return facts.Replay is { } replay ? new Paragraph(replay) : new Missing("The plan was not tried on later months. That takes closed jobs with known parts that count for one of these vans.");
        if (facts.ReplayRows.Count > 0)
        {
            yield return TableView.Create("van-replay", "The plan beside other ways of stocking", "Jobs of later months, replayed in order of call. Money: the average over the quarters.", facts.ReplayRows,
                [
                    new("Way of stocking", r => r.Way), new("Jobs", r => r.Jobs, CellKind.Count), new("Finished at first visit (95 %)", r => r.Finished, CellKind.Share),
                    new("Money on the van", r => r.Money, CellKind.Money),
                ]);
        }

        yield return new Paragraph(FirstVisitMeans);
        if (facts.Capital is { } capital)
        {
            yield return new Paragraph(capital);
        }

        if (facts.Curves.Count > 0)
        {
            yield return BudgetChart(facts, currency);
        }

        if (facts.Vans.All(v => !v.Counted))
        {
            yield return new Missing("No van has been counted, so each plan lists the whole load, not what to add and take off. Add a van count to your files.");
        }

        foreach (IBlock block in facts.Vans.SelectMany((van, i) => Plan(van, facts.Heading(van.Van), i + 1)))
        {
            yield return block;
        }
    }

    private static IEnumerable<IBlock> Plan(VanPlanView van, string heading, int number) => van.Summary.StartsWith(Refused, StringComparison.Ordinal)
        ? [new SubHeading(heading), new Missing(van.Summary)]
        :
    [
        new SubHeading(heading),
        new Paragraph(van.Summary),
        TableView.Create($"van-{number}", $"Plan for {heading}",
            van.Counted ? $"{van.Lines.Count} parts, against the last count. Jobs it saves: those a year that would need a second visit without it; a dash: not worth its money and space here." : $"{van.Lines.Count} parts; this van was not counted.",
            van.Lines,
            [
                new("Do", l => l.Todo), new("Part number", l => l.PartNumber, CellKind.Code), new("What it is", l => l.Description), new("On hand", l => l.OnHand, CellKind.Count),
                new("Plan", l => l.Target, CellKind.Count), new("Price", l => l.Price, CellKind.Money), new("Used a year", l => l.PiecesPerYear, CellKind.Number),
                new("Jobs a year it saves", l => l.JobsPerYear, CellKind.Number),
            ]) with
        {
            WhenEmpty = "Nothing is worth carrying within the money and space given.",
            RowsOnPage = RowsOnPage,
        },
    ];

    private static Curves BudgetChart(VanFacts facts, string currency)
    {
        string conclusion = "Where a curve flattens, more money on the van buys few more finished jobs.";
        string alternative = string.Join(" ", facts.Curves.Where(c => c.Points.Count > 0).Select(c => $"{c.Name}: {Format.Number(c.Points[^1].Value)} % at {Format.Number(c.Points[^1].X)}."));
        return new Curves(
            new ChartText("van-budget", "Jobs finished at the first visit, against money on the van", conclusion, facts.CurveBasis, $"{conclusion} {alternative}"),
            currency.Length == 0 ? "money on the van" : $"money on the van, {currency}", "finished at first visit, %", facts.Curves, facts.Budget, "money set for a van", YTop: 100);
    }
}
