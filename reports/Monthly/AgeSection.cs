using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>At what age things fail, where the data can say so.</summary>
public static class AgeSection
{
    /// <summary>Puts the section together.</summary>
    /// <param name="facts">What is known; null: age curves were not computed.</param>
    public static Section Build(AgeFacts? facts) => new("ages", "At what age things fail", [.. Blocks(facts)]);

    private static IEnumerable<IBlock> Blocks(AgeFacts? facts)
    {
        if (facts is null || facts.Groups.Count == 0)
        {
            yield return new Missing("No age curve is drawn. A job log alone holds only units that failed while the shop was keeping it, so a plain histogram of ages at failure would mislead; it takes a register, or enough dated failures to correct for that.");
        }
        else
        {
            yield return new Paragraph("A curve is drawn only where the ages are known well enough and the way units come into the log is allowed for. Curves rest on all months up to the day of the data, not on this month alone.");
            yield return new SideBySide([.. facts.Groups.Select(Draw)]);
        }

        if (facts is { NotDrawn.Count: > 0 })
        {
            yield return new TableView("ages-not-drawn", "No curve for these", "Failures of known age so far.",
                [new("Component"), new("Failures", CellKind.Count), new("Why not")],
                [.. facts.NotDrawn.Select(r => (IReadOnlyList<object?>)[Format.Words(r.Name), r.Events, r.Reason])]);
        }
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
