using System.Text.Json.Nodes;
using CsCheck;
using PartsSignal.Analysis.AgeCurves;
using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Analysis.Tests.AgeCurves;

public sealed class KaplanMeierTests
{
    [Fact]
    public void Estimate_Ties_MatchesReference()
    {
        Oracle oracle = Oracle.Named("kaplan_meier_ties");
        KaplanMeier curve = KaplanMeier.Estimate(AgeLedger.From(Spans.Of(oracle.Inputs)));
        oracle.Close(oracle.Expected["event_time"], [.. curve.Points.Select(p => p.Age)]);
        oracle.Close(oracle.Expected["n_risk"], [.. curve.Points.Select(p => (double)p.AtRisk)]);
        oracle.Close(oracle.Expected["n_event"], [.. curve.Points.Select(p => (double)p.Failures)]);
        oracle.Close(oracle.Expected["survival"], [.. curve.Points.Select(p => p.Survival)]);
        oracle.Close(oracle.Expected["greenwood_se"], [.. curve.Points.Select(p => p.StandardError!.Value)]);
        oracle.Close(oracle.Expected["lower"], [.. curve.Points.Select(p => p.Lower!.Value)]);
        oracle.Close(oracle.Expected["upper"], [.. curve.Points.Select(p => p.Upper!.Value)]);
        LifeQuantile median = LifeQuantile.Median(curve);
        oracle.Close(oracle.Expected["median"], median.Age);
        oracle.Close(oracle.Expected["median_ci_loglog"]![0], median.Lower);
        oracle.Close(oracle.Expected["median_ci_loglog"]![1], median.Upper);
        (double mean, double error) = RestrictedMeanLife.WithError(curve, (double)oracle.Inputs["rmst_tau"]!);
        oracle.Close(oracle.Expected["rmst18"], mean);
        oracle.Close(oracle.Expected["rmst18_se"], error);
    }

    [Fact]
    public void Estimate_LateEntry_MatchesReference()
    {
        Oracle oracle = Oracle.Named("kaplan_meier_left_truncated");
        KaplanMeier curve = KaplanMeier.Estimate(AgeLedger.From(Spans.Of(oracle.Inputs)));
        oracle.Close(oracle.Expected["event_time"], [.. curve.Points.Select(p => p.Age)]);
        oracle.Close(oracle.Expected["n_risk"], [.. curve.Points.Select(p => (double)p.AtRisk)]);
        oracle.Close(oracle.Expected["n_event"], [.. curve.Points.Select(p => (double)p.Failures)]);
        oracle.Close(oracle.Expected["survival"], [.. curve.Points.Select(p => p.Survival)]);
        JsonArray errors = oracle.Expected["greenwood_se"]!.AsArray();
        for (int i = 0; i < errors.Count; i++)
        {
            oracle.Close(errors[i], curve.Points[i].StandardError);
        }

        oracle.Close(oracle.Expected["cumhaz"], [.. NelsonAalen.Estimate(curve.Ledger).Select(p => p.CumulativeHazard)]);
    }

    [Fact]
    public void Estimate_EarlyRiskSetOfOne_IsGivenFromALaterStart()
    {
        Oracle oracle = Oracle.Named("kaplan_meier_left_truncated_early_risk_set_of_one");
        var ledger = AgeLedger.From(Spans.Of(oracle.Inputs));
        KaplanMeier naive = KaplanMeier.Estimate(ledger);
        oracle.Close(oracle.Expected["naive_event_time"], [.. naive.Points.Select(p => p.Age)]);
        oracle.Close(oracle.Expected["naive_survival"], [.. naive.Points.Select(p => p.Survival)]);
        KaplanMeier steady = KaplanMeier.Estimate(ledger, (double)oracle.Inputs["conditional_start"]!);
        oracle.Close(oracle.Expected["conditional_event_time"], [.. steady.Points.Select(p => p.Age)]);
        oracle.Close(oracle.Expected["conditional_survival_given_alive_at_5"], [.. steady.Points.Select(p => p.Survival)]);
        oracle.Close(oracle.Expected["conditional_n_risk"], [.. steady.Points.Select(p => (double)p.AtRisk)]);
    }

    [Fact]
    public void ConditionalStart_EarlyRiskSetOfOne_IsItsAge()
    {
        Oracle oracle = Oracle.Named("kaplan_meier_left_truncated_early_risk_set_of_one");
        Assert.Equal(2, ConditionalStart.Find(AgeLedger.From(Spans.Of(oracle.Inputs))));
        Assert.Null(ConditionalStart.Find(AgeLedger.From(Spans.FromNew([3, 4, 5, 6, 7, 8], [1, 1, 1, 1, 1, 1]))));
    }

    [Fact]
    public void Estimate_AgesSetApartByArithmetic_AreOneStep()
    {
        KaplanMeier curve = KaplanMeier.Estimate(AgeLedger.From(Spans.FromNew([182 / 365.25, 0.4982888, 2], [1, 1, 0])));
        SurvivalPoint point = Assert.Single(curve.Points);
        Assert.Equal((3, 2), (point.AtRisk, point.Failures));
        Assert.Equal(1.0 / 3, point.Survival, tolerance: 1e-11);
    }

    [Fact]
    public void Estimate_ThreeFailuresOnOneDay_IsOneStepTwiceTheSame()
    {
        AgeSpan[] spans = Spans.FromNew([400, 400, 400, 900, 900], [1, 1, 1, 0, 0]);
        KaplanMeier curve = KaplanMeier.Estimate(AgeLedger.From(spans));
        Assert.Equal(0.4, Assert.Single(curve.Points).Survival, tolerance: 1e-11);
        Assert.Equal(curve.Points, KaplanMeier.Estimate(AgeLedger.From(spans)).Points);
    }

    [Fact]
    public void Median_HeavyCensoring_IsNotReached()
    {
        double[] ages = [.. Enumerable.Range(1, 100).Select(i => (double)i)];
        int[] causes = new int[100];
        causes[30] = 1;
        LifeQuantile median = LifeQuantile.Median(KaplanMeier.Estimate(AgeLedger.From(Spans.FromNew(ages, causes))));
        Assert.Equal((null, null, null), (median.Age, median.Lower, median.Upper));
        Assert.StartsWith("not reached", median.Missing, StringComparison.Ordinal);
    }

    [Fact]
    public void Median_NothingFailed_SaysSo() =>
        Assert.Equal("nothing has failed yet", LifeQuantile.Median(KaplanMeier.Estimate(AgeLedger.From(Spans.FromNew([1, 2], [0, 0])))).Missing);

    [Fact]
    public void Median_LevelAtOneHalf_IsTheMiddleOfTheLevel() =>
        Assert.Equal(2.5, LifeQuantile.Median(KaplanMeier.Estimate(AgeLedger.From(Spans.FromNew([1, 2, 3, 4], [1, 1, 1, 1])))).Age);

    [Fact]
    public void Of_UnusableSpans_AreListedByRow()
    {
        var ledger = AgeLedger.From([new AgeSpan(0, 5, 1), new AgeSpan(4, 4, 1), new AgeSpan(6, 4, 0), new AgeSpan(-1, 3, 1), new AgeSpan(0, double.NaN, 1)]);
        Assert.Equal([1, 2, 3, 4], ledger.Rejected.Select(r => r.Row));
        Assert.Equal(ledger.Rejected, WeibullFit.FromLedger(ledger).Rejected);
        Assert.Equal((1, 1), (ledger.Units, ledger.Failures));
    }

    [Fact]
    public void Estimate_UnusableSpan_IsNamedWithItsReason() =>
        Assert.Equal(
            [new BadRow(1, "watching ends no later than it begins")],
            KaplanMeier.Estimate([new AgeSpan(0, 5, 1), new AgeSpan(4, 4, 1)]).Rejected);

    [Theory]
    [InlineData(2, 1, 2, "Row 1: more failed than left.")]
    [InlineData(2, 2, 0, "Row 1: more leave than came.")]
    [InlineData(1, 1, 0, "Row 1: the age is not above the one before.")]
    public void FromCounts_BadRow_IsNamedWithItsReason(double age, long exits, long failures, string message) =>
        Assert.StartsWith(
            message,
            Assert.Throws<ArgumentException>(() => AgeLedger.FromCounts([new(1, 1, 0, 0), new(age, 0, exits, failures)])).Message,
            StringComparison.Ordinal);

    [Fact]
    public void FromCounts_SameCounts_GiveTheSameCurve()
    {
        var spans = AgeLedger.From(Spans.Of(Oracle.Named("kaplan_meier_left_truncated").Inputs));
        Assert.Equal(KaplanMeier.Estimate(spans).Points, KaplanMeier.Estimate(AgeLedger.FromCounts(spans.Rows)).Points);
        Assert.Throws<ArgumentException>(() => AgeLedger.FromCounts([new AgeLedgerRow(1, 1, 0, 0), new AgeLedgerRow(2, 0, 2, 1)]));
    }

    [Fact]
    public void RestrictedMean_AllFailedBeforeHorizon_IsTheMean() =>
        Assert.Equal(2, RestrictedMeanLife.WithError(KaplanMeier.Estimate(AgeLedger.From(Spans.FromNew([1, 2, 3], [1, 1, 1]))), 10).Area, tolerance: 1e-11);

    [Fact]
    public void Estimate_AnyOrder_GivesTheSameCurve() =>
        AnySpans.Select(spans => (spans, Gen.Shuffle(spans))).SelectMany(p => p.Item2, (p, shuffled) => (p.spans, shuffled)).ForAll(p =>
            Assert.Equal(Curve(p.spans).Points, Curve(p.shuffled).Points));

    [Fact]
    public void Estimate_DoubledData_DoublesCountsAndKeepsTheCurve() =>
        AnySpans.ForAll(spans =>
        {
            KaplanMeier once = Curve(spans);
            KaplanMeier twice = Curve([.. spans, .. spans]);
            Assert.Equal(once.Points.Select(p => (p.Age, p.AtRisk * 2, p.Failures * 2)), twice.Points.Select(p => (p.Age, p.AtRisk, p.Failures)));
            Assert.All(once.Points.Zip(twice.Points), p => Assert.Equal(p.First.Survival, p.Second.Survival, tolerance: 1e-11));
        });

    [Fact]
    public void Estimate_DaysForYears_RescalesAgesOnly() =>
        AnySpans.ForAll(spans =>
        {
            KaplanMeier years = Curve(spans);
            KaplanMeier days = Curve([.. spans.Select(s => s with { Entry = s.Entry * 365.25, Exit = s.Exit * 365.25 })]);
            Assert.Equal(years.Points.Select(p => (p.AtRisk, p.Failures, p.Survival)), days.Points.Select(p => (p.AtRisk, p.Failures, p.Survival)));
            Assert.All(years.Points.Zip(days.Points), p => Assert.Equal(p.First.Age * 365.25, p.Second.Age, tolerance: 1e-6));
        });

    private static readonly Gen<AgeSpan[]> AnySpans =
        Gen.Select(Gen.Int[0, 40], Gen.Int[1, 40], Gen.Int[0, 2], (entry, stay, cause) => new AgeSpan(entry / 4.0, (entry + stay) / 4.0, cause)).Array[1, 40];

    private static KaplanMeier Curve(AgeSpan[] spans) => KaplanMeier.Estimate(AgeLedger.From(spans));
}
