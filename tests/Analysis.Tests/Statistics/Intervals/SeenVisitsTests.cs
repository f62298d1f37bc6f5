using PartsSignal.Analysis.Statistics.Intervals;

namespace PartsSignal.Analysis.Tests.Statistics.Intervals;

public class SeenVisitsTests
{
    [Fact]
    public void Of_OracleCase_Matches()
    {
        Oracle oracle = Oracle.Named("zero_truncated_visits");
        var visits = oracle.Inputs["visit_frequency"]!.AsObject()
            .ToDictionary(v => int.Parse(v.Key, System.Globalization.CultureInfo.InvariantCulture), v => (long)v.Value!);
        CaptureRecapture seen = CaptureRecapture.From(visits);
        oracle.Close(oracle.Expected["n_units_seen"], seen.UnitsSeen);
        oracle.Close(oracle.Expected["mean_visits"], seen.MeanVisits);
        oracle.Close(oracle.Expected["lambda_ztp"], seen.VisitsPerUnit);
        oracle.Close(oracle.Expected["N_hat_ztp"], seen.UnitsByTruncatedPoisson);
        oracle.Close(oracle.Expected["chao_lower_bound"], seen.LowerBound);
        oracle.Close(oracle.Expected["chao_bias_corrected"], seen.LowerBoundCorrected);
    }

    [Fact]
    public void Of_EveryUnitCalledOnce_HasNoEstimate()
    {
        CaptureRecapture seen = CaptureRecapture.From(new Dictionary<int, long> { [1] = 9 });
        Assert.Null(seen.UnitsByTruncatedPoisson);
        Assert.Null(seen.LowerBound);
        Assert.Equal(9 + 36, seen.LowerBoundCorrected);
    }
}
