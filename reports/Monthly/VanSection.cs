using System.Globalization;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Components;
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
    private const string All = "all";
    private const int LeastSetJobs = 30;
    private const string Refused = "No plan: ";

    // Below this share of the money, something else than the money ends the load.
    private const decimal SpentShare = 0.9m;

    // What more money buys is told for this much more at least: a few coins buy nothing.
    private const decimal MoreShare = 1.2m;

    // The share in the job log is another figure, and a reader would compare the two.
    private const string FirstVisitMeans =
        "In this section, a job counts as finished at the first visit only if every part it needed was on the van. The share in your job log can be higher: a part may have been brought for the call, or fetched the same day.";

    private static readonly string[] Policies = ["plan", "most_used", "most_used_per_cost", "poisson_greedy", "hindsight"];

    private sealed record Summary(
        string Van, decimal? Budget, double? Space, decimal? MoneyUsed, double? SpaceUsed, int Parts, int Pieces, double? JobsPerYear, double? Completion,
        double? CompletionCounted, double? BoundGap, string Answer, decimal? MoneyCounted, long? BookedJobs, double? BookedFinished, long? WaitingJobs, double? CompletionForCounted);

    private sealed record Replayed(string Policy, string Quarter, string Van, long Jobs, Estimate Completion, decimal? Money,
        string? BestRule, double? LeadBest, double? LeadBestLower, double? LeadBestUpper, long? SetJobs, double? SetLead, double? SetLeadLower, double? SetLeadUpper);

    private sealed record Dead(string Van, string PartNumber, int Quantity, decimal Money, int? DaysUnused);

    private sealed record Spent(decimal Budget, double? PlanCompletion, double? BestRuleCompletion);

    private sealed record Bought(string Van, decimal Budget, double? PlanCompletion);

    /// <summary>The plans and their evidence; null if no plan was made.</summary>
    public static VanFacts? Read(Database database, string currency)
    {
        if (!new[] { "van_summary", "van_plan", "van_changes", "van_evidence", "van_curve" }.All(database.Has))
        {
            return null;
        }

        ILookup<string, VanLine> lines = database.Read<VanLine>("queries/report/van_lines.sql").ToLookup(l => l.Van);
        IReadOnlyList<Summary> summaries = [.. database.ReadTable<Summary>("van_summary").OrderBy(s => s.Van, StringComparer.Ordinal)];
        IReadOnlyList<Replayed> evidence = database.ReadTable<Replayed>("van_evidence");
        ILookup<string, Bought> curve = database.ReadTable<Bought>("van_curve").ToLookup(c => c.Van, StringComparer.Ordinal);
        bool wasTried = evidence.Any(r => r.Quarter == All && r.Van == All && r.Policy == "plan" && r.Jobs > 0);
        return new VanFacts(
            [.. summaries.Select(s => new VanPlanView(s.Van, Describe(s, [.. curve[s.Van]], currency), s.CompletionCounted is not null, [.. lines[s.Van]]))],
            wasTried ? Replay(evidence) : null,
            [.. evidence.Where(r => wasTried && r.Quarter == All && r.Van == All && r.Policy != "counted") // other jobs, other money: no like to compare with
                .OrderBy(r => Array.IndexOf(Policies, r.Policy) is >= 0 and var place ? place : Policies.Length)
                .Select(r => new ReplayedPolicy(Way(r.Policy), r.Jobs, r.Completion.Value is null ? Estimate.None("no jobs") : r.Completion, r.Money))],
            BudgetCurves(database), "Jobs expected of each van, mean over the vans.",
            summaries.Count == 0 ? null : (double?)summaries.Max(s => s.Budget))
        {
            StandIn = database.Has("jobs") ? VanStandIn.Of(database) : null,
            Capital = Capital(summaries, database, currency),
        };
    }

    private static string? Capital(IReadOnlyList<Summary> summaries, Database database, string currency)
    {
        ILookup<bool, Dead> dead = (database.Has("van_dead_stock") ? database.ReadTable<Dead>("van_dead_stock") : []).ToLookup(d => d.Van == Analysis.VanPlan.ShelfStock.Name);
        string?[] parts = [Capital(summaries, [.. dead[false]], currency), OnShelf([.. dead[true]], currency)];
        return parts.All(p => p is null) ? null : string.Join(' ', parts.OfType<string>());
    }

    private static string? OnShelf(IReadOnlyList<Dead> dead, string currency) => dead.Count == 0
        ? null
        : $"On the shelf, {Format.Count(dead.Sum(d => (long)d.Quantity))} pieces worth {Format.Money(dead.Sum(d => d.Money), currency)} show no use or purchase in your files for the past year.";

    private static string Apart(Summary[] counted) => counted.Any(s => s.WaitingJobs > 0) ? " (without parts set aside for waiting jobs)" : "";

    /// <summary>Money tied up on counted vans now and with the plans, and what of it lies dead; null: no van was counted.</summary>
    private static string? Capital(IReadOnlyList<Summary> summaries, IReadOnlyList<Dead> dead, string currency)
    {
        Summary[] counted = [.. summaries.Where(s => s.MoneyCounted is not null)];
        if (counted.Length == 0)
        {
            return null;
        }

        string vans = counted.Length == 1 ? $"{VanStandIn.Named(counted[0].Van)} ties" : $"The {Format.Count(counted.Length)} counted vans tie";
        string now = $"{vans} up {Format.Money(counted.Sum(s => s.MoneyCounted!.Value), currency)} now{Apart(counted)}, and {Format.Money(counted.Sum(s => s.MoneyUsed ?? 0), currency)} with the plan.";
        if (dead.Count == 0)
        {
            return now;
        }

        Dead oldest = dead.OrderByDescending(d => d.DaysUnused ?? int.MaxValue).ThenBy(d => d.PartNumber, StringComparer.Ordinal).First();
        string age = oldest.DaysUnused is { } days ? $"none was used anywhere for {Format.Number(days / 365.25)} years" : "none was used or bought in your files";
        return $"{now} Of what is aboard, {Format.Count(dead.Sum(d => (long)d.Quantity))} pieces worth {Format.Money(dead.Sum(d => d.Money), currency)} show no use or purchase in your files in the past year; the longest idle is {oldest.PartNumber} on {VanStandIn.Named(oldest.Van)}: {age}.";
    }

    private static string Describe(Summary van, IReadOnlyList<Bought> curve, string currency)
    {
        if (van.Answer.StartsWith("no plan", StringComparison.Ordinal))
        {
            return $"{char.ToUpperInvariant(van.Answer[0])}{van.Answer[1..]}.";
        }

        string waiting = van.WaitingJobs is > 0 and { } wait
            ? $" {Format.Count(wait)} open {(wait == 1 ? "job is" : "jobs are")} waiting for an ordered part. Set that part aside for the job; it is not in this load."
            : "";
        string load = $"{Format.Count(van.Parts)} parts, {Format.Count(van.Pieces)} pieces, for {Format.Money(van.MoneyUsed ?? 0, currency)} of {Format.Money(van.Budget ?? 0, currency)} and {Format.Number(van.SpaceUsed ?? 0)} of {Format.Number(van.Space ?? 0)} space units.";
        string tied = van.MoneyCounted is { } money ? $" ties up {Format.Money(money, currency)} and" : "";
        string best = van.CompletionForCounted is { } same ? $"; the best load for that money would finish {Format.Percent(same)}" : "";
        string aboard = van.CompletionCounted is { } counted ? $" What was counted aboard{tied} should finish {Format.Percent(counted)}{best}." : "";
        string unspent = van is { Pieces: > 0, MoneyUsed: { } used, Budget: { } budget, SpaceUsed: { } filled, Space: { } space } && used < budget * SpentShare && filled < space * (double)SpentShare
            ? " The rest of the money is not spent: one more part would cost more to carry than the second visits it saves."
            : "";
        string brings = van.Completion is { } completion
            ? $" Of about {Format.Count((long)Math.Round(van.JobsPerYear ?? 0))} settled jobs a year, {Format.Percent(completion)} should be finished at the first visit; no other load for this money can be expected to be more than {Format.Percent(van.BoundGap ?? 0)} better.{aboard}"
            : "";
        string more = unspent.Length == 0 ? More(van, curve, currency) : "";
        string booked = van.BookedJobs is > 0 and { } jobs
            ? $" Of {Format.Count(jobs)} calls not visited yet, about {Format.Count((long)Math.Round(van.BookedFinished ?? 0))} should be finished at the first visit, with what is taken along for them."
            : "";
        return load + unspent + brings + more + booked + waiting + (van.Answer == "planned" ? "" : $" Note: {van.Answer}.");
    }

    /// <summary>What more money on the van would buy; empty if the curve does not tell.</summary>
    private static string More(Summary van, IReadOnlyList<Bought> curve, string currency)
    {
        Bought? now = curve.FirstOrDefault(c => c.Budget == van.Budget), then = curve.Where(c => c.Budget >= van.Budget * MoreShare).MinBy(c => c.Budget);
        if (now?.PlanCompletion is not { } before || then?.PlanCompletion is not { } after || van.JobsPerYear is not { } jobs)
        {
            return "";
        }

        long gained = (long)Math.Round((after - before) * jobs);
        string money = Format.Money(then.Budget - now.Budget, currency);
        return gained < 1 ? $" Another {money} for this van would not finish one job more a year." : $" Another {money} for this van should finish about {Format.Count(gained)} more jobs a year at the first visit.";
    }

    private static string? Replay(IReadOnlyList<Replayed> evidence)
    {
        string[] quarters = [.. evidence.Select(r => r.Quarter).Where(q => q != All).Distinct().Order(StringComparer.Ordinal)];
        return quarters.Length == 0 ? null
            : $"Each plan was made from what was known before a quarter and then tried on the jobs of that quarter, in order of call, {quarters[0]} to {quarters[^1]}.{Lead(evidence.FirstOrDefault(r => r.Quarter == All && r.Van == All && r.Policy == "plan"))} \"Best possible with hindsight\" is the limit: no plan can know the jobs in advance.";
    }

    /// <summary>What the plan gains over the best simple rule for the same money, or that it gains nothing.</summary>
    private static string Lead(Replayed? plan)
    {
        if (plan is not { BestRule: { } rule, LeadBest: { } lead, LeadBestLower: { } lower, LeadBestUpper: { } upper })
        {
            return "";
        }

        string range = $"(very likely between {InHundred(lower)} and {InHundred(upper)})";
        string all = lower > 0 ? $" Of 100 jobs it finished {InHundred(lead)} more {range} than the best simple rule for the same money, {Way(rule)}."
            : upper < 0 ? $" The best simple rule, {Way(rule)}, did better for the same money: the plan finished {InHundred(-lead)} jobs in 100 fewer. Until that changes, use the simple rule."
            : $" It was not clearly better or worse than the best simple rule for the same money ({Way(rule)}): the difference was {InHundred(lead)} jobs in 100 {range}.";
        return all + (plan is { SetJobs: >= LeastSetJobs, SetLead: { } sets, SetLeadLower: { } setLower, SetLeadUpper: { } setUpper }
            ? setLower > 0 ? $" On jobs that needed two or more different parts it finished {InHundred(sets)} in 100 more."
            : setUpper < 0 ? $" On jobs that needed two or more different parts it finished {InHundred(-sets)} fewer in 100."
            : " On jobs that needed two or more different parts it was not clearly better or worse."
            : "");
    }

    private static string InHundred(double share) => (100 * share).ToString("0.0", CultureInfo.InvariantCulture);

    private static IReadOnlyList<Curve> BudgetCurves(Database database)
    {
        IReadOnlyList<Spent> points = database.Read<Spent>("queries/report/van_curve.sql");
        Curve Line(string name, Func<Spent, double?> share) =>
            new(name, [.. points.Where(p => share(p) is not null).Select(p => new CurvePoint((double)p.Budget, 100 * share(p)!.Value))]);
        return points.Count < 2 ? [] : [Line("plan", p => p.PlanCompletion), Line("best simple rule", p => p.BestRuleCompletion)];
    }

    private static string Way(string policy) => policy switch
    {
        "plan" => "the plan",
        "most_used" => "most used parts first",
        "most_used_per_cost" => "parts most used for their price first",
        "poisson_greedy" => "parts most likely to be needed for their price first",
        "hindsight" => "best possible with hindsight",
        "counted" => "as counted",
        _ => Format.Words(policy),
    };

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
