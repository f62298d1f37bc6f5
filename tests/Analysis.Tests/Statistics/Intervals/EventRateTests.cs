using System.Text.Json.Nodes;
using CsCheck;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Intervals;

namespace PartsSignal.Analysis.Tests.Statistics.Intervals;

public class EventRateTests
{
    [Fact]
    public void Intervals_OracleCases_Match()
    {
        Oracle oracle = Oracle.Named("poisson_rate_intervals_95");
        foreach (JsonNode? expected in oracle.Expected.AsArray())
        {
            long events = (long)expected!["events"]!;
            double exposure = (double)expected["exposure"]!;
            Estimate garwood = EventRate.Garwood(events, exposure), jeffreys = EventRate.Jeffreys(events, exposure);
            oracle.Close(expected["rate"], garwood.Value);
            oracle.Close(expected["garwood"]![0], garwood.Lower);
            oracle.Close(expected["garwood"]![1], garwood.Upper);
            oracle.Close(expected["jeffreys"]![0], jeffreys.Lower);
            oracle.Close(expected["jeffreys"]![1], jeffreys.Upper);
        }
    }

    [Theory]
    [InlineData(0, "no exposure")]
    [InlineData(3, "events without exposure")]
    public void Garwood_NoExposure_IsMissingWithReason(long events, string reason) =>
        Assert.Equal(reason, EventRate.Garwood(events, 0).Missing);

    [Fact]
    public void Garwood_BadRows_AreNamedAndTheRestHaveRates()
    {
        IReadOnlyList<Estimate> rates = EventRate.Garwood([(3, 12), (-1, 12), (3, double.NaN), (0, 0)]);
        Assert.Equal(
            [null, "row 1: the count of events is below 0", "row 2: the exposure is missing or below 0", "no exposure"],
            rates.Select(r => r.Missing));
        Assert.Equal(EventRate.Garwood(3, 12), rates[0]);
    }

    [Fact]
    public void Garwood_DaysInsteadOfYears_Rescales()
    {
        Gen.Select(Gen.Int[0, 300], Gen.Double[0.01, 5000]).ForAll((events, years) =>
        {
            Estimate year = EventRate.Garwood(events, years), day = EventRate.Garwood(events, years * 365.25);
            Assert.Equal(year.Upper!.Value, day.Upper!.Value * 365.25, year.Upper.Value * 1e-10);
            Assert.Equal(year.Lower!.Value, day.Lower!.Value * 365.25, year.Upper.Value * 1e-10);
        });
    }

    [Theory]
    [InlineData("poisson_rate_ratio_exact")]
    [InlineData("poisson_rate_ratio_zero_arm")]
    public void RateRatio_OracleCase_Matches(string name)
    {
        Oracle oracle = Oracle.Named(name);
        int[] events = Oracle.Wholes(oracle.Inputs["events"]);
        double[] exposure = Oracle.Numbers(oracle.Inputs["exposure"]);
        RateRatio ratio = RateRatio.Exact(events[0], exposure[0], events[1], exposure[1]);
        oracle.Close(oracle.Expected["ratio"], ratio.Ratio.Value);
        oracle.Close(oracle.Expected["ci"]![0], ratio.Ratio.Lower);
        oracle.Close(oracle.Expected["ci"]![1], ratio.Ratio.Upper);
        oracle.Close(oracle.Expected["p_two_sided"], ratio.P);
    }

    [Fact]
    public void RateRatio_NoEventsToCompareWith_HasPButNoRatio()
    {
        RateRatio ratio = RateRatio.Exact(4, 150, 0, 120);
        Assert.Equal("no events to compare with", ratio.Ratio.Missing);
        Assert.Equal(RateRatio.Exact(0, 120, 4, 150).P!.Value, ratio.P!.Value, 1e-12);
    }

    [Fact]
    public void StandardisedRatio_OracleCase_Matches()
    {
        Oracle oracle = Oracle.Named("indirect_standardised_ratio");
        StandardizedRatio ratio = StandardizedRatio.From(
            (long)oracle.Inputs["observed"]!, Oracle.Numbers(oracle.Inputs["expected_by_age_band"]).Sum());
        oracle.Close(oracle.Expected["expected_total"], ratio.Expected);
        oracle.Close(oracle.Expected["ratio"], ratio.Ratio.Value);
        oracle.Close(oracle.Expected["garwood_ci"]![0], ratio.Ratio.Lower);
        oracle.Close(oracle.Expected["garwood_ci"]![1], ratio.Ratio.Upper);
        oracle.Close(oracle.Expected["p_upper"], ratio.UpperP);
        oracle.Close(oracle.Expected["p_upper_mid"], ratio.UpperMidP);
    }

    [Fact]
    public void StandardisedRatio_NothingExpected_IsMissing() =>
        Assert.Equal("nothing expected", StandardizedRatio.From(2, 0).Ratio.Missing);
}
