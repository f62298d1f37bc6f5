using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>What each van should carry, with the evidence.</summary>
public static class VanSection
{
    // The whole list is the van's pick list and a sheet of the workbook; the page shows what matters most.
    private const int RowsOnPage = 40;

    /// <summary>Puts the section together.</summary>
    /// <param name="facts">What is known; null: no plan was made.</param>
    /// <param name="currency">The shop's currency mark.</param>
    public static Section Build(VanFacts? facts, string currency) => new("vans", "What each van should carry", [.. Blocks(facts, currency)]);

    private static IEnumerable<IBlock> Blocks(VanFacts? facts, string currency)
    {
        if (facts is null || facts.Vans.Count == 0)
        {
            yield return new Missing("No van plan was made. It takes closed jobs with their part numbers, prices, and at least one van in shop.json or in the job log.");
            yield break;
        }

        yield return facts.Replay is { } replay ? new Paragraph(replay) : new Missing("The plan was not tried on later months: there are too few closed jobs with known parts.");
        if (facts.ReplayRows.Count > 0)
        {
            yield return new TableView("van-replay", "The plan beside other ways of stocking", "Jobs of later months, replayed in order of call.",
                [new("Way of stocking"), new("Jobs", CellKind.Count), new("Finished at first visit (95 %)", CellKind.Share), new("Money on the van", CellKind.Money)],
                [.. facts.ReplayRows.Select(r => (IReadOnlyList<object?>)[r.Way, r.Jobs, r.Finished, r.Money])]);
        }

        if (facts.Curves.Count > 0)
        {
            yield return Curve(facts, currency);
        }

        if (facts.Vans.All(v => !v.Counted))
        {
            yield return new Missing("No van has been counted, so each plan lists the whole kit, not what to add and take off. Add a van count to shop.json.");
        }

        for (int i = 0; i < facts.Vans.Count; i++)
        {
            VanPlanView van = facts.Vans[i];
            yield return new SubHeading($"Van {van.Van}");
            yield return new Paragraph(van.Summary);
            yield return new TableView($"van-{i + 1}", $"Plan for van {van.Van}", van.Counted ? $"{van.Lines.Count} parts, against the last count. Jobs it saves: those a year that would need a second visit without it; a dash: not worth its money and space here." : $"{van.Lines.Count} parts; this van was not counted.",
                [new("Do"), new("Part number", CellKind.Code), new("What it is"), new("On hand", CellKind.Count), new("Plan", CellKind.Count), new("Price", CellKind.Money), new("Used a year", CellKind.Number), new("Jobs a year it saves", CellKind.Number)],
                [.. van.Lines.Select(l => (IReadOnlyList<object?>)[l.Action, l.PartNumber, l.Description, l.OnHand, l.Planned, l.Price, l.PiecesPerYear, l.JobsPerYear])],
                "Nothing is worth carrying within the money and space given.", RowsOnPage);
        }
    }

    private static Curves Curve(VanFacts facts, string currency)
    {
        string conclusion = "Where a curve flattens, more money on the van buys few more finished jobs.";
        string alternative = string.Join(" ", facts.Curves.Where(c => c.Points.Count > 0).Select(c => $"{c.Name}: {Format.Number(c.Points[^1].Value)} % at {Format.Number(c.Points[^1].X)}."));
        return new Curves(
            new ChartText("van-budget", "Jobs finished at the first visit, against money on the van", conclusion, facts.CurveBasis, $"{conclusion} {alternative}"),
            currency.Length == 0 ? "money on the van" : $"money on the van, {currency}", "finished at first visit, %", facts.Curves, facts.Budget, "money set for a van", YTop: 100);
    }
}
