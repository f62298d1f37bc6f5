using PartsSignal.Analysis.VanPlan.Replay;
using PartsSignal.Analysis.VanPlan.Stock;

namespace PartsSignal.Analysis.Tests.VanPlan.Stock;

public sealed class JobFillRateTests
{
    [Theory]
    [InlineData(ConsumeRule.TakeWhatIsThere, "per_job_consume", "jfr_consume_even_if_job_incomplete")]
    [InlineData(ConsumeRule.AllOrNothing, "per_job_all_or_nothing", "jfr_all_or_nothing")]
    public void PerJob_ReferenceTour_EqualsTheReference(ConsumeRule rule, string perJob, string mean)
    {
        Oracle oracle = Oracle.Named("job_fill_rate_independent_parts");
        double[] done = JobFillRate.PerJob(
            Oracle.Numbers(oracle.Inputs["p"]), Oracle.Wholes(oracle.Inputs["stock"]), (int)oracle.Inputs["jobs_per_tour"]!, rule);
        oracle.Close(oracle.Expected[perJob], done);
        oracle.Close(oracle.Expected[mean], done.Average());
    }
}
