using System.Text.Json.Nodes;
using PartsSignal.Analysis.Trends;

namespace PartsSignal.Analysis.Tests.Trends;

public sealed class ReportingDelayTests
{
    [Fact]
    public void Estimate_OpenMonths_MatchesReference()
    {
        Oracle oracle = Oracle.Named("reporting_delay_nowcast");
        long[][] triangle = [.. oracle.Inputs["triangle"]!.AsArray().Select(r =>
            r is JsonArray row ? row.Select(n => n!.GetValue<long>()).ToArray() : [r!.GetValue<long>()])];
        ReportingDelay delay = ReportingDelay.Estimate(triangle);
        oracle.Close(oracle.Expected["reverse_hazard_d1_d3"], delay.ReverseHazards);
        oracle.Close(oracle.Expected["F_delay_0_3"], delay.Completeness);
        oracle.Close(oracle.Expected["nowcast"], [.. triangle.Select(r => delay.Nowcast(r.Sum(), r.Length - 1)!.Value)]);
    }

    [Fact]
    public void Estimate_NothingLate_IsCompleteAtOnce() =>
        Assert.Equal([1, 1, 1], ReportingDelay.Estimate([[5, 0, 0], [4, 0], [7]]).Completeness);

    [Fact]
    public void Estimate_NoMonths_IsComplete() => Assert.Equal(1, ReportingDelay.Estimate([]).After(3));
}
