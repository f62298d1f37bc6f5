using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Vocabulary;
using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>Age curves that can be drawn honestly, and why the others cannot.</summary>
/// <param name="Groups">Curves by component: those from the register first.</param>
/// <param name="NotDrawn">Components without a curve, with the reason.</param>
internal sealed record AgeFacts(IReadOnlyList<AgeGroup> Groups, IReadOnlyList<AgeRefusal> NotDrawn)
{
    /// <summary>True if the shop has a register.</summary>
    public bool HasRegister { get; init; }
}

/// <summary>The curves of one component.</summary>
/// <param name="Name">What fails.</param>
/// <param name="Method">In words: how the curve was estimated and what it leaves out.</param>
/// <param name="Basis">Whose ages, how many units and failures.</param>
/// <param name="Conclusion">What to conclude.</param>
/// <param name="YTitle">What the height shows, with its unit.</param>
/// <param name="Curves">The curves, heights in percent.</param>
internal sealed record AgeGroup(string Name, string Method, string Basis, string Conclusion, string YTitle, IReadOnlyList<Curve> Curves);

/// <summary>A component without a curve.</summary>
internal sealed record AgeRefusal(string Name, long Failures, string Reason);

/// <summary>At what age things fail, where the data can say so.</summary>
internal static class AgeSection
{
    private const string AllFamilies = "all";

    /// <summary>Failures of one part at a known age that a curve takes.</summary>
    private const int LeastFailures = 8;

    private sealed record Curved(
        string ApplianceType, string Component, string ModelFamily, string Basis, string? Condition, long Units, long Failures,
        Estimate MedianYears, string? Nature, Estimate OthersRatio)
    {
        public bool IsWhole => ModelFamily == AllFamilies;

        public bool IsRegister => Basis == "register";
    }

    private sealed record NotCurved(string ApplianceType, string Component, long Failures, string? Reason);

    private sealed record Point(double AgeYears, Estimate ShareFailed);

    /// <summary>The curves that can be drawn; null if age curves were not computed.</summary>
    public static AgeFacts? Read(Database database)
    {
        if (!database.Has("age_curve_summary") || !database.Has("age_curve_points"))
        {
            return null;
        }

        RegisterMachines machines = RegisterMachines.Read(database);
        UntoldFailures untold = UntoldFailures.Read(database);
        return new AgeFacts(
            [.. database.Read<Curved>("queries/report/age_curves.sql", ("least", LeastFailures)).GroupBy(c => (c.Basis, c.ApplianceType, c.Component)).Select(g => Group(database, machines, untold, [.. g]))],
            [.. database.Read<NotCurved>("queries/report/ages_not_drawn.sql", ("least", LeastFailures))
                .Select(n => new AgeRefusal($"{Format.Words(n.ApplianceType)} {Format.Words(n.Component)}", n.Failures, n.Reason ?? $"fewer than {LeastFailures} failures at a known age"))])
        {
            HasRegister = machines.Whose != "none" && machines.Machines > 0,
        };
    }

    private static AgeGroup Group(Database database, RegisterMachines machines, UntoldFailures untold, IReadOnlyList<Curved> curves)
    {
        Curved whole = curves.FirstOrDefault(c => c.IsWhole) ?? curves[0];
        string title = $"{Format.Words(whole.ApplianceType)}, {Format.Words(whole.Component)}, {(whole.IsRegister ? machines.Name : machines.LogWhose == "household" ? "household machines" : "all machines")}: share {(whole.IsRegister ? "still without a failure" : "of the failures we were called to that came after each age")}";
        string method = whole.IsRegister
            ? $"Machines on the register, followed whether or not they fail, each from the age at which we began to follow it (Kaplan-Meier). A callback counts as part of the repair before it. {MachineAge.Words} {machines.Scope}{untold.Describe(whole.ApplianceType, whole.Component)}"
            : $"Job log alone, {whole.Condition}, corrected for the ages the log could not see. Earlier repairs that we never saw make the ages look too high; machines scrapped or repaired elsewhere make them look too low.";
        IReadOnlyList<CurvePoint>[] points = [.. curves.Select(c => Points(database, c))];
        CurvePoint? half = whole.IsRegister ? null : points[curves.Index().First(c => c.Item == whole).Index].FirstOrDefault(p => p.Value <= 50);
        return new AgeGroup(
            Format.Capital(title), method, whole.IsRegister
                ? $"{Format.Count(whole.Units)} units, {Format.Count(whole.Failures)} of them with a failure of this part."
                : $"{Format.Count(whole.Failures)} failures.", Conclusion(whole, machines, curves, half?.X),
            whole.IsRegister ? "without failure, %" : "came later, %",
            [.. curves.Select((c, i) => new Curve(c.IsWhole ? "all families" : $"family {c.ModelFamily}", points[i], Steps: true))]);
    }

    private static string Conclusion(Curved whole, RegisterMachines machines, IReadOnlyList<Curved> curves, double? halfCame)
    {
        string part = Format.Words(whole.Component);
        string half = (whole.IsRegister, whole.MedianYears.Value, halfCame) switch
        {
            (true, _, _) when machines.IsMixed => machines.Scope,
            (true, { } median, _) => $"Half of {machines.Name} had a failure of the {part} by {Format.Number(median)} years{Range(whole.MedianYears)}.",
            (true, null, _) => $"The age by which half have failed is not known ({whole.MedianYears.Missing}).",
            (false, _, { } age) => $"Of the {part} failures we were called to, half came before {Format.Number(age)} years. This does not say how many fail.",
            _ => $"At which age half of the {part} failures came is not known.",
        };
        string nature = whole.Nature switch
        {
            "wear" => " Wears out with age.",
            "early" => " Fails more when new.",
            "chance" => " Fails about equally at any age.",
            _ => "",
        };
        return half + nature + string.Concat(curves.Where(c => !c.IsWhole && c.OthersRatio.Value is not null)
            .Select(c => $" Family {c.ModelFamily} failed {Format.Estimate(c.OthersRatio)} times as often as its type would at the same ages."));
    }

    private static string Range(Estimate years) => (years.Lower, years.Upper) switch
    {
        ({ } low, { } high) => $" ({Format.Number(low)}\u2013{Format.Number(high)})",
        ({ } low, null) => $" (from {Format.Number(low)})",
        _ => "",
    };

    private static IReadOnlyList<CurvePoint> Points(Database database, Curved curve) =>
        [.. database.Read<Point>("queries/report/age_points.sql",
                ("type", curve.ApplianceType), ("component", curve.Component), ("family", curve.ModelFamily), ("basis", curve.Basis))
            .Select(p => new CurvePoint(p.AgeYears, 100 * (1 - p.ShareFailed.Value!.Value), 100 * (1 - p.ShareFailed.Upper), 100 * (1 - p.ShareFailed.Lower)))];

    /// <param name="facts">What is known, or null if age curves were not computed.</param>
    public static Section Build(AgeFacts? facts) => new("ages", "At what age things fail", [.. Blocks(facts)]);

    private static IEnumerable<IBlock> Blocks(AgeFacts? facts)
    {
        if (facts is null || facts.Groups.Count == 0)
        {
            yield return new Missing(NoCurve(facts));
        }
        else
        {
            yield return new Paragraph("A curve is drawn only where the ages are known well enough and the way units come into the log is allowed for. Curves rest on all months up to the day of the data, not on this month alone.");
            yield return new SideBySide([.. facts.Groups.Select(Draw)]);
        }

        if (facts is { NotDrawn.Count: > 0 })
        {
            yield return TableView.Create("ages-not-drawn", "No curve for these", "Failures of known age so far.", facts.NotDrawn,
                [new("Component", r => Format.Words(r.Name)), new("Failures", r => r.Failures, CellKind.Count), new("Why not", r => r.Reason)]);
        }
    }

    private static string NoCurve(AgeFacts? facts)
    {
        AgeRefusal? most = facts?.NotDrawn.FirstOrDefault();
        bool enough = most?.Failures >= LeastFailures;
        string why = enough ? "The table says why."
            : $"It takes at least {LeastFailures} failures of one part at a known age" + (most is null ? ", and there is none yet." : $"; the most so far is {Format.Count(most.Failures)} ({Format.Words(most.Name)}).");
        string help = facts is not { HasRegister: true } ? " A register helps most: a list of machines with their build or purchase dates, whether they failed or not. A job log alone holds only machines that failed."
            : enough ? ""
            : " Record the serial number on each job, so that more failures can be found in your register.";
        return $"No age curve is drawn. {why}{help}";
    }

    private static IBlock Draw(AgeGroup group, int i) => new Curves(
        new ChartText($"age-{i + 1}", group.Name, group.Conclusion, $"{group.Method} {group.Basis}", $"{group.Conclusion} {Values(group)}"),
        "age of the appliance, years", group.YTitle, group.Curves, YTop: 100);

    private static string Values(AgeGroup group) => string.Join(" ", group.Curves.Select(c =>
        $"{c.Name}: " + string.Join(", ", Sampled(c.Points).Select(p => $"{Format.Number(p.Value)} % at {Format.Tick(p.X)} years")) + "."));

    private static IEnumerable<CurvePoint> Sampled(IReadOnlyList<CurvePoint> points)
    {
        int every = Math.Max(1, points.Count / 5);
        return points.Where((_, i) => i % every == 0 || i == points.Count - 1);
    }
}
