using PartsSignal.Analysis.Sql;
using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>Reads the van plan and its evidence.</summary>
internal static class VanReader
{
    public static VanFacts? Read(Database database, string currency)
    {
        if (!database.Has("van_summary") || !database.Has("van_plan") || !database.Has("van_changes") || !database.Has("van_evidence") || !database.Has("van_curve"))
        {
            return null;
        }

        ILookup<string, VanLine> lines = database.Read("queries/report/van_lines.sql", r => (Van: r.GetString(0), Line: new VanLine(
            r.GetString(1), r.GetString(2), r.Text(3), r.Long(4), r.Long(5) ?? 0, r.Money(6), r.Double(7), r.Double(8)))).ToLookup(l => l.Van, l => l.Line);
        var summaries = database.Read("queries/report/van_summary.sql", r => (Van: r.GetString(0), Budget: r.Money(1), Text: Summary(r, currency), Counted: r.Double(9) is not null));
        IReadOnlyList<ReplayRow> replay = database.Read("queries/report/van_evidence.sql", r => new ReplayRow(
            Way(r.GetString(0)), r.Int(1), r.Estimate(2, "no jobs"), r.Money(5)));
        return new VanFacts(
            [.. summaries.Select(s => new VanPlanView(s.Van, s.Text, s.Counted, [.. lines[s.Van]]))],
            Replay(database), replay, Curves(database), "Jobs expected of each van, mean over the vans.",
            summaries.Count == 0 ? null : (double?)summaries.Max(s => s.Budget));
    }

    private static string Summary(System.Data.Common.DbDataReader r, string currency)
    {
        string kit = $"{Format.Count(r.Int(5))} parts, {Format.Count(r.Int(6))} pieces, for {Format.Money(r.Money(3) ?? 0, currency)} of {Format.Money(r.Money(1) ?? 0, currency)} and {Format.Number(r.Double(4) ?? 0)} of {Format.Number(r.Double(2) ?? 0)} space units.";
        string brings = r.Double(8) is { } completion
            ? $" Of about {Format.Count((long)Math.Round(r.Double(7) ?? 0))} settled jobs a year, {Format.Percent(completion)} should be finished at the first visit{(r.Double(9) is { } counted ? $", against {Format.Percent(counted)} with what was counted aboard{(r.Money(13) is { } tied ? $", which ties up {Format.Money(tied, currency)}" : "")}" : "")}; no other kit can be expected to be more than {Format.Percent(r.Double(11) ?? 0)} better."
            : "";
        string booked = r.Long(14) is > 0 and { } jobs
            ? $" Of {Format.Count(jobs)} jobs already booked on it, {Format.Number(r.Double(15) ?? 0)} should be finished at the first visit."
            : "";
        string answer = r.GetString(12);
        return kit + brings + booked + (answer == "planned" ? "" : $" Note: {answer}.");
    }

    private static string? Replay(Database database) => database.Read("queries/report/van_quarters.sql", r => r.Text(0) is { } first && r.Text(1) is { } last
        ? $"Each plan was made from what was known before a quarter and then tried on the jobs of that quarter, in order of call, {first} to {last}. What could only be known afterwards is the ceiling."
        : null)[0];

    private static IReadOnlyList<Curve> Curves(Database database)
    {
        var points = database.Read("queries/report/van_curve.sql", r => (Budget: (double)(r.Money(0) ?? 0), Plan: r.Double(1), Used: r.Double(2)));
        Curve Line(string name, Func<(double Budget, double? Plan, double? Used), double?> share) =>
            new(name, [.. points.Where(p => share(p) is not null).Select(p => new CurvePoint(p.Budget, 100 * share(p)!.Value))]);
        return points.Count < 2 ? [] : [Line("plan", p => p.Plan), Line("most used parts first", p => p.Used)];
    }

    private static string Way(string policy) => policy switch
    {
        "plan" => "the plan",
        "most_used" => "most used parts first",
        "most_used_per_cost" => "most used per money first",
        "hindsight" => "known only afterwards",
        "counted" => "as counted",
        _ => Format.Words(policy),
    };
}
