using System.Text.Json.Nodes;
using PartsSignal.Analysis.Statistics.Linkage;

namespace PartsSignal.Analysis.Tests.Statistics.Linkage;

public class FellegiSunterTests
{
    [Fact]
    public void Weight_OracleCases_Match()
    {
        Oracle oracle = Oracle.Named("fellegi_sunter_weights");
        var rule = new FellegiSunter(
            Oracle.Numbers(oracle.Inputs["m"]), Oracle.Numbers(oracle.Inputs["u"]), (double)oracle.Inputs["prior"]!);
        foreach (JsonNode? expected in oracle.Expected.AsArray())
        {
            bool[] agrees = Agrees(expected!);
            oracle.Close(expected!["weight_log2"], rule.Weight(agrees));
            oracle.Close(expected["posterior"], rule.Posterior(agrees));
        }
    }

    [Fact]
    public void Learn_OracleCase_Matches()
    {
        Oracle oracle = Oracle.Named("fellegi_sunter_em");
        JsonNode start = oracle.Inputs["start"]!;
        (IReadOnlyList<bool>, double)[] patterns =
            [.. oracle.Inputs["pattern_counts"]!.AsArray().Select(p => ((IReadOnlyList<bool>)Agrees(p!), (double)p!["count"]!))];
        FellegiSunter learned = new FellegiSunter(
            Oracle.Numbers(start["m"]), Oracle.Numbers(start["u"]), (double)start["lambda_"]!).Learn(patterns);
        oracle.Close(oracle.Expected["m"], learned.M);
        oracle.Close(oracle.Expected["u"], learned.U);
        oracle.Close(oracle.Expected["lambda_"], learned.Prior);
    }

    private static bool[] Agrees(JsonNode node) => [.. Oracle.Wholes(node["agree"]).Select(a => a == 1)];
}
