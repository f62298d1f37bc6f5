using System.Globalization;

namespace PartsSignal.SampleShop.Scoring;

/// <summary>Figures that say whether a shop's world is hard enough and not too wild, with the bands they should lie in.</summary>
public sealed record WorldFigures
{
    /// <summary>Jobs in the log.</summary>
    public required int Jobs { get; init; }

    /// <summary>Calls typed as 'no fill'.</summary>
    public required int NoFillJobs { get; init; }

    /// <summary>Share of no-fill calls whose true component the best odds name first.</summary>
    public required double NoFillTop1 { get; init; }

    /// <summary>Share of no-fill calls whose true component is among the best odds' first three.</summary>
    public required double NoFillTop3 { get; init; }

    /// <summary>Mean log loss of the best odds on no-fill calls, in nats.</summary>
    public required double NoFillLossBest { get; init; }

    /// <summary>Mean log loss on no-fill calls of the shares of components among them, in nats.</summary>
    public required double NoFillLossComplaintOnly { get; init; }

    /// <summary>Mean log loss of the best odds, in nats.</summary>
    public required double LossBest { get; init; }

    /// <summary>Mean log loss the best odds expect of themselves (their entropy), in nats.</summary>
    public required double LossBestExpected { get; init; }

    /// <summary>Mean log loss of the shares of components by complaint kind, in nats.</summary>
    public required double LossComplaintOnly { get; init; }

    /// <summary>Share of calls whose true component the best odds name first.</summary>
    public required double Top1 { get; init; }

    /// <summary>Share of calls whose true component is among the best odds' first three.</summary>
    public required double Top3 { get; init; }

    /// <summary>Share of the families that have fewer than 100 jobs.</summary>
    public required double FamiliesUnder100Jobs { get; init; }

    /// <summary>Share of jobs that used two or more parts.</summary>
    public required double TwoOrMoreParts { get; init; }

    /// <summary>Share of calls that truly needed no part.</summary>
    public required double NoPartNeeded { get; init; }

    /// <summary>Share of the jobs that got a part that were finished at the first visit.</summary>
    public required double FirstVisitFitted { get; init; }

    /// <summary>Share of all repaired jobs that were finished at the first visit.</summary>
    public required double FirstVisitRepaired { get; init; }

    /// <summary>Share of jobs that are a wrong diagnosis come back.</summary>
    public required double Callbacks { get; init; }

    /// <summary>Jobs still open on the last day.</summary>
    public required int OpenAtTheEnd { get; init; }

    /// <summary>The bands, as: figure, value, lowest, highest allowed. Small families are a matter of size: counted for one area of full size only.</summary>
    public IReadOnlyList<(string Name, double Value, double Low, double High)> Bands =>
    [
        .. IsOneArea ? [("families with fewer than 100 jobs", FamiliesUnder100Jobs, 0.25, 0.45)] : Array.Empty<(string, double, double, double)>(),
        ("no fill: right cause named first", NoFillTop1, 0.45, 0.65),
        ("no fill: right cause within three", NoFillTop3, 0.80, 0.93),
        ("no fill: nats lost by complaint-only shares", NoFillLossComplaintOnly - NoFillLossBest, 0.25, 2),
        ("all calls: nats lost by complaint-only shares", LossComplaintOnly - LossBest, 0.25, 2),
        ("jobs with two or more parts", TwoOrMoreParts, 0.10, 0.20),
        ("calls that needed no part", NoPartNeeded, 0.20, 0.35),
        ("finished at the first visit, part fitted", FirstVisitFitted, 0.60, 0.75),
        ("finished at the first visit, all repaired", FirstVisitRepaired, 0.60, 0.75),
    ];

    private bool IsOneArea => Jobs is > 16_000 and < 24_000;

    /// <summary>One line per band.</summary>
    public IEnumerable<string> Lines() => Bands.Select(b => string.Create(
        CultureInfo.InvariantCulture,
        $"{(b.Value >= b.Low && b.Value <= b.High ? "ok " : "OUT")} {b.Name}: {b.Value:0.000} (from {b.Low:0.00} to {b.High:0.00})"));
}
