using CsCheck;
using PartsSignal.Analysis.AgeCurves;

namespace PartsSignal.Analysis.Tests.AgeCurves;

public sealed class WeibullFitTests
{
    [Fact]
    public void FromLedger_RightCensored_MatchesReference()
    {
        Oracle oracle = Oracle.Named("weibull_mle_right_censored");
        WeibullFit fit = WeibullFit.FromLedger(AgeLedger.From(Spans.Of(oracle.Inputs)));
        Matches(oracle, fit);
        oracle.Close(oracle.Expected["se_log_shape"], Math.Sqrt(fit.Covariance!.Shape));
        oracle.Close(oracle.Expected["se_log_scale"], Math.Sqrt(fit.Covariance.Scale));
        oracle.Close(oracle.Expected["B10"], fit.Life!.Quantile(0.1));
        oracle.Close(oracle.Expected["median"], fit.Life.Quantile(0.5));
    }

    [Fact]
    public void FromLedger_Lung_MatchesReference()
    {
        Oracle oracle = Oracle.Named("weibull_mle_lung");
        Matches(oracle, WeibullFit.FromLedger(AgeLedger.From(Spans.Of(oracle.Inputs))));
    }

    [Fact]
    public void FromLedger_LateEntry_MatchesReferenceAndIgnoringItWouldBiasTheShape()
    {
        Oracle oracle = Oracle.Named("weibull_mle_left_truncated_right_censored");
        AgeSpan[] spans = Spans.Of(oracle.Inputs);
        WeibullFit fit = WeibullFit.FromLedger(AgeLedger.From(spans));
        Matches(oracle, fit);

        // The reference took its curvature from finite differences and is off in the fourth digit; differences in
        // 50-digit arithmetic at its maximum give 0.366905095.
        Assert.Equal(0.366905095, Math.Sqrt(fit.Covariance!.Shape), tolerance: 1e-6);
        Assert.Equal((double)oracle.Expected["se_log_shape"]!, Math.Sqrt(fit.Covariance.Shape), tolerance: 3e-4);
        oracle.Close(oracle.Expected["se_log_scale"], Math.Sqrt(fit.Covariance.Scale));
        WeibullFit ignored = WeibullFit.FromLedger(AgeLedger.From([.. spans.Select(s => s with { Entry = 0 })]));
        oracle.Close(oracle.Expected["shape_if_truncation_ignored"], ignored.Shape.Value);
        oracle.Close(oracle.Expected["scale_if_truncation_ignored"], ignored.Scale.Value);
    }

    [Fact]
    public void FromTruncated_WindowsThatHideNothing_IsThePlainFit()
    {
        double[] ages = [14, 20, 32, 35, 47, 61, 70];
        WeibullFit plain = WeibullFit.FromLedger(AgeLedger.From([.. ages.Select(a => new AgeSpan(0, a, 1))]));
        WeibullFit truncated = WeibullFit.FromTruncated([.. ages.Select(a => new TruncatedAge(a, 0, 1e4))]);
        Assert.Equal(plain.Shape.Value!.Value, truncated.Shape.Value!.Value, tolerance: 1e-8);
        Assert.Equal(plain.Scale.Value!.Value, truncated.Scale.Value!.Value, tolerance: 1e-6);
    }

    [Fact]
    public void FromLedger_ShapeInterval_LosesTheAllowedLikelihoodAtItsEnds()
    {
        WeibullFit fit = WeibullFit.FromLedger(AgeLedger.From(Spans.Of(Oracle.Named("weibull_mle_right_censored").Inputs)));
        double[] failures = [14, 20, 32, 35, 47];
        double Profile(double shape)
        {
            double power = failures.Sum(f => Math.Pow(f, shape)) + 5 * Math.Pow(60, shape);
            double scale = Math.Pow(power / 5, 1 / shape);
            return failures.Sum(f => Math.Log(shape) - shape * Math.Log(scale) + (shape - 1) * Math.Log(f)) - 5;
        }

        Assert.Equal(fit.LogLikelihood!.Value, Profile(fit.Shape.Value!.Value), tolerance: 1e-8);
        Assert.Equal(1.920729410, fit.LogLikelihood!.Value - Profile(fit.Shape.Lower!.Value), tolerance: 1e-6);
        Assert.Equal(1.920729410, fit.LogLikelihood!.Value - Profile(fit.Shape.Upper!.Value), tolerance: 1e-6);
    }

    [Theory]
    [InlineData("nothing has failed yet", new[] { 1.0, 2, 3 }, new[] { 0, 0, 0 })]
    [InlineData("fewer than 3 failures", new[] { 13467.0, 12011, 7798, 7928, 13760 }, new[] { 0, 0, 0, 0, 1 })]
    [InlineData("all failures are at one age: the shape is not identified", new[] { 5.0, 5, 5, 4 }, new[] { 1, 1, 1, 0 })]
    public void FromLedger_WhatCannotBeFitted_IsRefusedWithTheReason(string reason, double[] ages, int[] causes)
    {
        WeibullFit fit = WeibullFit.FromLedger(AgeLedger.From(Spans.FromNew(ages, causes)));
        Assert.Equal(reason, fit.Missing);
        Assert.Null(fit.Life);
    }

    [Fact]
    public void FromTruncated_ScaleNotIdentified_IsRefused()
    {
        WeibullFit fit = WeibullFit.FromTruncated([new(0.1, 0, 2), new(1.9, 0, 2), new(1.95, 0, 2), new(1.98, 0, 2)]);
        Assert.NotNull(fit.Missing);
    }

    [Fact]
    public void FromLedger_DaysForYears_RescalesTheScaleOnly() =>
        AnySample.ForAll(ages =>
        {
            WeibullFit years = Fit(ages, 1);
            WeibullFit days = Fit(ages, 365.25);
            Assert.Equal(years.Missing, days.Missing);
            if (years.Life is { } life)
            {
                Assert.Equal(1, days.Life!.Shape / life.Shape, tolerance: 1e-7);
                Assert.Equal(1, days.Life.Scale / life.Scale / 365.25, tolerance: 1e-7);
            }
        });

    [Fact]
    public void FromLedger_DoubledData_KeepsTheFitAndNarrowsIt() =>
        AnySample.ForAll(ages =>
        {
            WeibullFit once = Fit(ages, 1);
            WeibullFit twice = Fit([.. ages, .. ages], 1);
            if (once.Life is { } life)
            {
                Assert.Equal(1, twice.Life!.Shape / life.Shape, tolerance: 1e-7);
                Assert.True(once.Shape.Upper is null || twice.Shape.Upper < once.Shape.Upper);
            }
        });

    [Fact]
    public void Chance_ClosedForm_MatchesReference()
    {
        Oracle oracle = Oracle.Named("weibull_conditional");
        var life = new WeibullLife((double)oracle.Inputs["shape"]!, (double)oracle.Inputs["scale"]!);
        double age = (double)oracle.Inputs["age"]!;
        oracle.Close(oracle.Expected["hazard_at_age"], life.Hazard(age));
        oracle.Close(oracle.Expected["conditional_failure_prob"], life.ChanceWithin(age, (double)oracle.Inputs["horizon"]!));
        oracle.Close(oracle.Expected["mean_life"], life.Mean);
        oracle.Close(oracle.Expected["median"], life.Quantile(0.5));
    }

    private static readonly Gen<(double Age, int Cause)[]> AnySample =
        Gen.Select(Gen.Int[1, 4000], Gen.Int[0, 2]).Array[3, 30].Select(rows => rows.Select(r => (r.Item1 / 100.0, r.Item2)).ToArray());

    private static WeibullFit Fit((double Age, int Cause)[] rows, double unit) =>
        WeibullFit.FromLedger(AgeLedger.From([.. rows.Select(r => new AgeSpan(0, r.Age * unit, r.Cause))]));

    private static void Matches(Oracle oracle, WeibullFit fit)
    {
        oracle.Close(oracle.Expected["shape"], fit.Shape.Value);
        oracle.Close(oracle.Expected["scale"], fit.Scale.Value);
        oracle.Close(oracle.Expected["loglik"], fit.LogLikelihood);
        Assert.InRange(fit.Shape.Value!.Value, fit.Shape.Lower!.Value, fit.Shape.Upper!.Value);
        Assert.InRange(fit.Scale.Value!.Value, fit.Scale.Lower!.Value, fit.Scale.Upper!.Value);
    }
}
