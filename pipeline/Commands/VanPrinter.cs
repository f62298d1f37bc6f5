using System.Globalization;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Planning;
using PartsSignal.Reports.Components;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Prints one list of the plan; for people with a few lines about each van above it.</summary>
internal static class VanPrinter
{
    private const int TextWidth = 20;
    private const int NarrowTextWidth = 16;

    public static void Print(TextWriter writer, VanSettings settings, ShopPlan plan, string bookedNote, string currency)
    {
        bool Asked(string van) => settings.Van is null || van == settings.Van;
        if (settings.Format == OutputFormat.Table)
        {
            foreach (VanSummary van in plan.Summaries.Where(s => Asked(s.Van)))
            {
                Say(writer, van, currency);
            }

            writer.WriteLine($"{char.ToUpperInvariant(bookedNote[0])}{bookedNote[1..]}.");
            writer.WriteLine();
        }

        switch (settings.List)
        {
            case VanList.Plan: TablePrinter.Print(writer, settings.Format, [.. plan.Rows.Where(r => Asked(r.Van))], Plan); break;
            case VanList.Booked: TablePrinter.Print(writer, settings.Format, [.. plan.Booked.Where(r => Asked(r.Van))], Booked); break;
            case VanList.Curve: TablePrinter.Print(writer, settings.Format, [.. plan.Curve.Where(r => Asked(r.Van))], Curve); break;
            case VanList.Next: TablePrinter.Print(writer, settings.Format, [.. plan.Next.Where(r => Asked(r.Van))], Next); break;
            case VanList.Orders: TablePrinter.Print(writer, settings.Format, Orders(plan, settings), Order); break;
            default:
                TablePrinter.Print(writer, settings.Format, [.. plan.Changes.Where(c => Asked(c.Van) && (settings.Format != OutputFormat.Table || c.Action != ChangeAction.Keep))], Change);
                break;
        }
    }

    private static IReadOnlyList<OrderLine> Orders(ShopPlan plan, VanSettings settings) =>
        settings.Van is null ? plan.Orders : [.. plan.Orders.Where(o => o.ForVans.Split(", ").Any(v => v.Split(" x")[0] == settings.Van))];

    private static void Say(TextWriter writer, VanSummary van, string currency)
    {
        if (van.Answer.StartsWith("no plan", StringComparison.Ordinal))
        {
            TerminalText.Write(writer, $"Van {van.Van}: {van.Answer}.");
            return;
        }

        writer.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"Van {van.Van}: {van.Pieces} pieces of {van.Parts} parts, {MoneyFormat.Text(van.MoneyUsed, currency)} of {MoneyFormat.Text(van.Budget, currency)}, space {van.SpaceUsed:0} of {van.Space:0}"));
        writer.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"  should finish {van.Completion:0 %} of its jobs at the first visit ({van.CompletionEmpty:0 %} with an empty van)"));
        writer.WriteLine(Counted(van, currency));
        writer.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"  within {Math.Ceiling(van.BoundGap * 1000) / 1000:0.0 %} of the best possible plan"));
        if (van.Answer != "planned")
        {
            writer.WriteLine("  " + van.Answer);
        }

        if (van.Method.Contains("missing", StringComparison.Ordinal))
        {
            writer.WriteLine("  planned without the integer solver, whose library is missing");
        }

        if (van.BookedJobs > 0)
        {
            writer.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"  {van.BookedJobs} {(van.BookedJobs == 1 ? "call" : "calls")} not visited yet: about {van.BookedFinished:0} should be finished at the first visit"));
        }

        if (van.WaitingJobs > 0)
        {
            writer.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"  {van.WaitingJobs} {(van.WaitingJobs == 1 ? "job waits" : "jobs wait")} for an ordered part: set it aside; it is not in this load"));
        }
    }

    private static string Counted(VanSummary van, string currency) => van.CompletionCounted is { } c
        ? string.Create(CultureInfo.InvariantCulture, $"  with what is aboard today, {MoneyFormat.Text(van.MoneyCounted ?? 0, currency)}: {c:0 %}{(van.CompletionForCounted is { } best ? string.Create(CultureInfo.InvariantCulture, $"; best for that money: {best:0 %}") : "")}")
        : "  not counted: there is no stock count for this van";

    private static string? Cut(string? text, int width = TextWidth) => text is null || text.Length <= width ? text : text[..(width - 1)] + "…";

    private static readonly TableColumn<VanChange>[] Change =
    [
        new("van", "van", c => c.Van),
        new("action", "do", c => c.Action == ChangeAction.Replace ? "use up" : ChangeText.Action(c.Action)),
        new("part_number", "part", c => c.PartNumber),
        new("label", "label", c => Cut(c.Label, NarrowTextWidth / 2)),
        new("description", "what", c => Cut(c.Description, NarrowTextWidth)),
        new("quantity", "n", c => c.Quantity),
        new("other_van", "other", c => c.OtherVan),
        new("by", "by", c => c.By),
        new("money", "money", c => c.Money, "0.00"),
    ];

    private static readonly TableColumn<PlanRow>[] Plan =
    [
        new("van", "van", r => r.Van),
        new("part_number", "part", r => r.PartNumber),
        new("description", "what", r => Cut(r.Description)),
        new("minimum", "min", r => r.Minimum),
        new("target", "target", r => r.Target),
        new("money", "money", r => r.Money, "0.00"),
        new("pieces_per_year", "used/year", r => r.PiecesPerYear, "0.0"),
        new("jobs_per_year", "jobs/year", r => r.JobsPerYear, "0.0"),
    ];

    private static readonly TableColumn<BookedRow>[] Booked =
    [
        new("van", "van", r => r.Van),
        new("job_id", "job", r => r.JobId),
        new("opened_on", "called", r => r.OpenedOn),
        new("need", "may need", r => Cut(r.Need.Replace('_', ' '), NarrowTextWidth)),
        new("part_number", "part", r => r.PartNumber),
        new("quantity", "n", r => r.Quantity),
        new("chance", "odds", r => r.Chance, "0 %"),
        new("planned", "plan", r => r.Planned),
        new("aboard", "has", r => r.Aboard),
        new("take_along", "take", r => r.TakeAlong),
    ];

    private static readonly TableColumn<CurvePoint>[] Curve =
    [
        new("van", "van", r => r.Van),
        new("budget", "budget", r => r.Budget, "0"),
        new("plan_money", "used", r => r.PlanMoney, "0"),
        new("plan_completion", "plan", r => r.PlanCompletion, "0.0 %"),
        new("best_rule_completion", "simple rule", r => r.BestRuleCompletion, "0.0 %"),
        new("bound_completion", "at most", r => r.BoundCompletion, "0.0 %"),
        new("aboard_completion", "aboard today", r => r.AboardCompletion, "0.0 %"),
    ];

    private static readonly TableColumn<NextPart>[] Next =
    [
        new("van", "van", r => r.Van),
        new("move", "move", r => r.Move),
        new("rank", "rank", r => r.Rank),
        new("part_number", "part", r => r.PartNumber),
        new("description", "what", r => Cut(r.Description)),
        new("quantity", "n", r => r.Quantity),
        new("money", "money", r => r.Money, "0.00"),
        new("jobs_per_year", "jobs/year", r => r.JobsPerYear, "0.0"),
    ];

    private static readonly TableColumn<OrderLine>[] Order =
    [
        new("supplier", "supplier", o => o.Supplier),
        new("supplier_number", "their number", o => o.SupplierNumber),
        new("part_number", "part", o => o.PartNumber),
        new("description", "what", o => Cut(o.Description, NarrowTextWidth)),
        new("quantity", "n", o => o.Quantity),
        new("total", "total", o => o.Total, "0.00"),
        new("for_vans", "vans", o => o.ForVans),
    ];
}
