using PartsSignal.Analysis.Vocabulary;

namespace PartsSignal.Analysis.CheckOrder;

/// <summary>A check in its place.</summary>
/// <param name="Place">Its place, from 1.</param>
/// <param name="Check">The check.</param>
/// <param name="Odds">Chance that it ends the search by what it looks for, 0 to 1.</param>
/// <param name="Opening">Opening work to be done just before it, or null if there is none, or it is already open.</param>
public sealed record CheckStep(int Place, ComponentCheck Check, double Odds, OpeningWork? Opening);

/// <summary>The checks of one call in the order that finds the fault soonest.</summary>
/// <param name="Steps">The steps.</param>
/// <param name="ExpectedMinutes">Expected minutes of this order.</param>
/// <param name="CheapestFirstMinutes">Expected minutes when the quickest check comes first.</param>
/// <param name="LikeliestFirstMinutes">Expected minutes when the likeliest fault comes first.</param>
/// <param name="Exact">True: no order is quicker.</param>
public sealed record CallCheckPlan(
    IReadOnlyList<CheckStep> Steps, double ExpectedMinutes, double CheapestFirstMinutes, double LikeliestFirstMinutes, bool Exact);

/// <summary>Turns odds and the shop's table of checks into an order.</summary>
internal static class CallChecks
{
    /// <summary>Needs less likely than this are not worth a check of their own.</summary>
    public const double LeastOdds = 0.01;

    /// <summary>Most checks beside those that always come first.</summary>
    public const int MostChecks = 10;

    /// <summary>Odds the checks must cover together before the last suspect is taken for the fault unchecked.</summary>
    public const double InferFrom = 0.9;

    /// <summary>The plan of one call.</summary>
    /// <param name="table">The shop's checks.</param>
    /// <param name="applianceType">Type of the appliance.</param>
    /// <param name="complaintKind">Kind of the complaint.</param>
    /// <param name="odds">Odds of each need, summing to no more than 1.</param>
    /// <returns>Null: the table has no check for such a call.</returns>
    public static CallCheckPlan? Plan(CheckTable table, string applianceType, string complaintKind, IReadOnlyList<(string Need, double Odds)> odds)
    {
        (ComponentCheck Check, double Odds)[] checks = Chosen(table, applianceType, complaintKind, odds);
        if (checks.Length == 0)
        {
            return null;
        }

        var openings = table.Openings.Where(o => o.ApplianceType == applianceType).ToDictionary(o => o.Opening, StringComparer.Ordinal);
        Suspect[] suspects =
        [
            .. checks.Select(c => new Suspect(c.Check.What, c.Odds, c.Check.Minutes)
            {
                Opening = c.Check.Opening is { } o && openings.ContainsKey(o) ? o : null,
                Sensitivity = c.Check.Finds,
                AlwaysFirst = c.Check.First,
            }),
        ];
        var problem = new CheckProblem(
            suspects, openings.ToDictionary(o => o.Key, o => o.Value.Minutes, StringComparer.Ordinal), checks.Sum(c => c.Odds) >= InferFrom);
        CheckPlan best = CheckPlanner.Best(problem);
        return new CallCheckPlan(
            Steps(checks, openings, best.Order),
            best.ExpectedMinutes,
            CheckPlanner.CheapestFirst(problem).ExpectedMinutes,
            CheckPlanner.LikeliestFirst(problem).ExpectedMinutes,
            best.Exact);
    }

    private static (ComponentCheck Check, double Odds)[] Chosen(CheckTable table, string type, string kind, IReadOnlyList<(string Need, double Odds)> odds)
    {
        ComponentCheck[] meant = Meant(table, type, kind);
        meant = [.. meant, .. ForOwn(table, meant, odds)];
        Dictionary<string, double> shares = meant.GroupBy(c => c.Component, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Sum(c => c.Share), StringComparer.Ordinal);
        Dictionary<string, double> byNeed = odds.ToDictionary(o => o.Need, o => o.Odds, StringComparer.Ordinal);
        var all = meant.Select((c, i) => (Check: c, Odds: byNeed.GetValueOrDefault(c.Component) * c.Share / shares[c.Component], Row: i)).ToArray();
        int[] kept =
        [
            .. all.Where(c => c.Check.First).Select(c => c.Row),
            .. all.Where(c => !c.Check.First && c.Odds >= LeastOdds).OrderByDescending(c => c.Odds).ThenBy(c => c.Row).Take(MostChecks).Select(c => c.Row).Order(),
        ];
        return [.. kept.Select(i => (all[i].Check, all[i].Odds))];
    }

    // A component of the shop's own is checked as the row for any component says.
    private static IEnumerable<ComponentCheck> ForOwn(CheckTable table, ComponentCheck[] meant, IReadOnlyList<(string Need, double Odds)> odds)
    {
        if (Array.Find(meant, c => c.Component == ComponentCheck.AnyComponent) is not { } any)
        {
            yield break;
        }

        HashSet<string> named = [.. table.Checks.Select(c => c.Component), Need.NoPart, Need.OtherPart];
        foreach ((string need, _) in odds.Where(o => o.Odds >= LeastOdds && !named.Contains(o.Need)))
        {
            string name = need.Replace('_', ' ');
            yield return any with { Component = need, What = any.What.Replace("{component}", char.ToUpperInvariant(name[0]) + name[1..], StringComparison.Ordinal) };
        }
    }

    // The safety check for every type stands in only where the type has none of its own.
    private static ComponentCheck[] Meant(CheckTable table, string type, string kind)
    {
        ComponentCheck[] all = [.. table.Checks.Where(c => c.IsFor(type, kind))];
        return all.Any(c => c.IsSafety && c.ApplianceTypes.Count > 0) ? [.. all.Where(c => !c.IsSafety || c.ApplianceTypes.Count > 0)] : all;
    }

    private static IReadOnlyList<CheckStep> Steps(
        (ComponentCheck Check, double Odds)[] checks, Dictionary<string, OpeningWork> openings, IReadOnlyList<int> order)
    {
        var open = new HashSet<string>(StringComparer.Ordinal);
        var steps = new List<CheckStep>(order.Count);
        foreach (int place in order)
        {
            ComponentCheck check = checks[place].Check;
            OpeningWork? opening = check.Opening is { } o && openings.TryGetValue(o, out OpeningWork? work) && open.Add(o) ? work : null;
            steps.Add(new CheckStep(steps.Count + 1, check, checks[place].Odds, opening));
        }

        return steps;
    }
}
