using CsCheck;
using PartsSignal.Analysis.AgeCurves;

namespace PartsSignal.Analysis.Tests.AgeCurves;

public sealed class AalenJohansenTests
{
    [Fact]
    public void Estimate_TiedCauses_MatchesReferenceWithBothVariances()
    {
        Oracle oracle = Oracle.Named("aalen_johansen_tied_causes");
        IReadOnlyList<CompetingPoint> points = AalenJohansen.Estimate(Spans.Of(oracle.Inputs), 3, jackknife: true);
        oracle.Close(oracle.Expected["event_time"], [.. points.Select(p => p.Age)]);
        oracle.Close(oracle.Expected["overall_survival"], [.. points.Select(p => p.Survival)]);
        double[] times = Oracle.Numbers(oracle.Expected["cmprsk_times"]);
        for (int k = 0; k < 3; k++)
        {
            Incidence[] cause = [.. points.Select(p => p.ByCause[k])];
            oracle.Close(oracle.Expected[$"cif_{k + 1}"], [.. cause.Select(c => c.Share)]);
            oracle.Close(oracle.Expected[$"se_cif_{k + 1}"], [.. cause.Select(c => Math.Sqrt(c.JackknifeVariance!.Value))]);
            double[] variances = [.. times.Select(t => points.Last(p => p.Age <= t).ByCause[k].AalenVariance)];
            oracle.Close(oracle.Expected["cmprsk_var"]![k], variances);
        }
    }

    [Fact]
    public void Estimate_OtherCausesTakenForCensoring_WouldOverstate()
    {
        Oracle oracle = Oracle.Named("aalen_johansen_tied_causes");
        AgeSpan[] spans = Spans.Of(oracle.Inputs);
        KaplanMeier alone = KaplanMeier.Estimate(AgeLedger.From([.. spans.Select(s => s with { Cause = s.Cause == 1 ? 1 : 0 })]));
        oracle.Close(oracle.Expected["one_minus_KM_cause1_at_11_WRONG"], 1 - alone.SurvivalAt(11));
        Assert.True(AalenJohansen.Estimate(spans, 3)[^1].ByCause[0].Share < 1 - alone.SurvivalAt(11));
    }

    [Fact]
    public void Estimate_AnySpans_SharesAndSurvivalAddUpToOne() =>
        Gen.Select(Gen.Int[0, 20], Gen.Int[1, 20], Gen.Int[0, 3], (entry, stay, cause) => new AgeSpan(entry, entry + stay, cause)).Array[1, 40].ForAll(spans =>
            Assert.All(AalenJohansen.Estimate(spans, 3), p => Assert.Equal(1, p.Survival + p.ByCause.Sum(c => c.Share), tolerance: 1e-11)));

    [Fact]
    public void Estimate_OneCause_IsOneMinusKaplanMeier() =>
        Gen.Select(Gen.Int[0, 20], Gen.Int[1, 20], Gen.Int[0, 1], (entry, stay, cause) => new AgeSpan(entry, entry + stay, cause)).Array[1, 40].ForAll(spans =>
            Assert.All(
                AalenJohansen.Estimate(spans, 1).Zip(KaplanMeier.Estimate(AgeLedger.From(spans)).Points),
                p => Assert.Equal(p.Second.Survival, 1 - p.First.ByCause[0].Share, tolerance: 1e-11)));

    [Fact]
    public void Estimate_CauseBeyondTheNumber_IsRefused() =>
        Assert.Throws<ArgumentException>(() => AalenJohansen.Estimate([new AgeSpan(0, 1, 4)], 3));
}
