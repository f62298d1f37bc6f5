using System.Globalization;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Components;
using PartsInWords = PartsSignal.Analysis.VanPlan.PartsInWords;
using VanStandIn = PartsSignal.Analysis.VanPlan.VanStandIn;

namespace PartsSignal.Reports.Monthly;

/// <summary>Reads the plans of the vans and their evidence, and says them in words.</summary>
internal static class VanReader
{
    private const string All = "all";
    private const int LeastSetJobs = 30;

    // If less than this share of the money is spent, something other than money limits the load.
    private const decimal SpentShare = 0.9m;

    // Say what at least this much more money would buy; a few coins buy nothing.
    private const decimal MoreShare = 1.2m;

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
        Estimate? tried = wasTried ? evidence.First(r => r.Quarter == All && r.Van == All && r.Policy == "plan").Completion : null;
        return new VanFacts(
            [.. summaries.Select(s => new VanPlanView(s.Van, Describe(s, [.. curve[s.Van]], tried, currency), s.CompletionCounted is not null, [.. lines[s.Van]]))],
            wasTried ? Replay(evidence) : null,
            [.. evidence.Where(r => wasTried && r.Quarter == All && r.Van == All && r.Policy != "counted") // other jobs, other money: no like to compare with
                .OrderBy(r => Array.IndexOf(Policies, r.Policy) is >= 0 and var place ? place : Policies.Length)
                .Select(r => new ReplayedPolicy(Way(r.Policy), r.Jobs, r.Completion.Value is null ? Estimate.None("no jobs") : r.Completion, r.Money))],
            BudgetCurves(database), "Jobs expected of each van, mean over the vans.",
            summaries.Count == 0 ? null : (double?)summaries.Max(s => s.Budget))
        {
            StandIn = database.Has("jobs") ? VanStandIn.Of(database) : null,
            Words = database.Has("job_parts") && database.Has("fitments") ? PartsInWords.Of(database) : null,
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
        : $"On the shelf, {Format.Count(dead.Sum(d => (long)d.Quantity))} pieces worth {MoneyFormat.Text(dead.Sum(d => d.Money), currency)} show no use or purchase in your files for the past year.";

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
        string now = $"{vans} up {MoneyFormat.Text(counted.Sum(s => s.MoneyCounted!.Value), currency)} now{Apart(counted)}, and {MoneyFormat.Text(counted.Sum(s => s.MoneyUsed ?? 0), currency)} with the plan.";
        if (dead.Count == 0)
        {
            return now;
        }

        Dead oldest = dead.OrderByDescending(d => d.DaysUnused ?? int.MaxValue).ThenBy(d => d.PartNumber, StringComparer.Ordinal).First();
        string age = oldest.DaysUnused is { } days ? $"none was used anywhere for {Format.Number(days / 365.25)} years" : "none was used or bought in your files";
        return $"{now} Of what is aboard, {Format.Count(dead.Sum(d => (long)d.Quantity))} pieces worth {MoneyFormat.Text(dead.Sum(d => d.Money), currency)} show no use or purchase in your files in the past year; the longest idle is {oldest.PartNumber} on {VanStandIn.Named(oldest.Van)}: {age}.";
    }

    private static string Describe(Summary van, IReadOnlyList<Bought> curve, Estimate? tried, string currency)
    {
        if (van.Answer.StartsWith("no plan", StringComparison.Ordinal))
        {
            return $"{char.ToUpperInvariant(van.Answer[0])}{van.Answer[1..]}.";
        }

        string waiting = van.WaitingJobs is > 0 and { } wait
            ? $" {Format.Count(wait)} open {(wait == 1 ? "job is" : "jobs are")} waiting for an ordered part. Set that part aside for the job; it is not in this load."
            : "";
        string load = $"{Format.Count(van.Parts)} parts, {Format.Count(van.Pieces)} pieces, for {MoneyFormat.Text(van.MoneyUsed ?? 0, currency)} of {MoneyFormat.Text(van.Budget ?? 0, currency)} and {Format.Number(van.SpaceUsed ?? 0)} of {Format.Number(van.Space ?? 0)} space units.";
        string tied = van.MoneyCounted is { } money ? $" ties up {MoneyFormat.Text(money, currency)} and" : "";
        string best = van.CompletionForCounted is { } same ? $"; the best load for that money would finish {Format.Percent(same)}" : "";
        string aboard = van.CompletionCounted is { } counted ? $" What was counted aboard{tied} should finish {Format.Percent(counted)}{best}." : "";
        string unspent = van is { Pieces: > 0, MoneyUsed: { } used, Budget: { } budget, SpaceUsed: { } filled, Space: { } space } && used < budget * SpentShare && filled < space * (double)SpentShare
            ? " The rest of the money is not spent: one more part would cost more to carry than the second visits it saves."
            : "";
        string brings = van.Completion is { } completion
            ? $" Of about {Format.Count((long)Math.Round(van.JobsPerYear ?? 0))} settled jobs a year, {Format.Percent(completion)} should be finished at the first visit; {Bound(van.BoundGap)}{Hopeful(completion, tried)}{aboard}"
            : "";
        string more = unspent.Length == 0 ? More(van, curve, currency) : "";
        string booked = van.BookedJobs is > 0 and { } jobs
            ? $" Of {Format.Count(jobs)} calls not visited yet, about {Format.Count((long)Math.Round(van.BookedFinished ?? 0))} should be finished at the first visit, with what is taken along for them."
            : "";
        return load + unspent + brings + more + booked + waiting + (van.Answer == "planned" ? "" : $" Note: {van.Answer}.");
    }

    private static string Bound(double? gap) => gap is { } points && points >= 0.0005
        ? $"no other load for this money can be expected to be more than {Format.Percent(points)} better."
        : "no other load for this money can be expected to be better.";

    // The expectation knows only demand like that of the past; the replay met what came.
    private static string Hopeful(double completion, Estimate? tried) => tried is { Value: not null, Upper: { } upper } && completion > upper
        ? $" Expect less: on the jobs that came after them, plans made this way finished {Format.Share(tried)}."
        : "";

    /// <summary>What more money on the van would buy; empty if the curve does not tell.</summary>
    private static string More(Summary van, IReadOnlyList<Bought> curve, string currency)
    {
        Bought? now = curve.FirstOrDefault(c => c.Budget == van.Budget), then = curve.Where(c => c.Budget >= van.Budget * MoreShare).MinBy(c => c.Budget);
        if (now?.PlanCompletion is not { } before || then?.PlanCompletion is not { } after || van.JobsPerYear is not { } jobs)
        {
            return "";
        }

        long gained = (long)Math.Round((after - before) * jobs);
        string money = MoneyFormat.Text(then.Budget - now.Budget, currency);
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
}
