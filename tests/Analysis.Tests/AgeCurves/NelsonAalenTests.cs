using PartsSignal.Analysis.AgeCurves;

namespace PartsSignal.Analysis.Tests.AgeCurves;

public sealed class NelsonAalenTests
{
    [Fact]
    public void Estimate_Ties_MatchesReference()
    {
        Oracle oracle = Oracle.Named("nelson_aalen_ties");
        var ledger = AgeLedger.From(Spans.Of(oracle.Inputs));
        IReadOnlyList<HazardPoint> points = NelsonAalen.Estimate(ledger);
        oracle.Close(oracle.Expected["event_time"], [.. points.Select(p => p.Age)]);
        oracle.Close(oracle.Expected["cumhaz"], [.. points.Select(p => p.CumulativeHazard)]);
        oracle.Close(oracle.Expected["var_aalen_d_over_r2"], [.. points.Select(p => p.Variance)]);
        oracle.Close(oracle.Expected["var_binomial"], [.. points.Select(p => p.BinomialVariance)]);
        oracle.Close(oracle.Expected["breslow_survival"], [.. points.Select(p => Math.Exp(-p.CumulativeHazard))]);
        oracle.Close(oracle.Expected["cumhaz_fleming_harrington_ties"], [.. NelsonAalen.Estimate(ledger, TieRule.InTurn).Select(p => p.CumulativeHazard)]);
    }

    [Fact]
    public void Estimate_NothingFailed_IsEmpty() => Assert.Empty(NelsonAalen.Estimate(AgeLedger.From(Spans.FromNew([1, 2], [0, 0]))));
}
