using System.Text.Json.Nodes;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Intervals;

namespace PartsSignal.Analysis.Tests.Statistics.Intervals;

public class DisproportionalityTests
{
    [Fact]
    public void InformationComponent_OracleTable_Matches()
    {
        Oracle oracle = Oracle.Named("disproportionality_no_denominator");
        int[][] table = [.. oracle.Inputs["table_rows_family_cols_component"]!.AsArray().Select(Oracle.Wholes)];
        double total = table.Sum(r => r.Sum());
        for (int i = 0; i < table.Length; i++)
        {
            for (int k = 0; k < table[i].Length; k++)
            {
                double expected = table[i].Sum() * table.Sum(r => r[k]) / total;
                oracle.Close(oracle.Expected["expected"]![i]![k], expected);
                Estimate ic = InformationComponent.From(table[i][k], expected);
                oracle.Close(oracle.Expected["IC"]![i]![k], ic.Value);
                oracle.Close(oracle.Expected["IC025_exact_gamma"]![i]![k], ic.Lower);
            }
        }

        Estimate prr = ReportingRatio.Proportional(14, 30, 21, 69);
        oracle.Close(oracle.Expected["PRR_cell_1_1"], prr.Value);
        oracle.Close(oracle.Expected["PRR_ci"]![0], prr.Lower);
        oracle.Close(oracle.Expected["PRR_ci"]![1], prr.Upper);
        oracle.Close(oracle.Expected["ROR_cell_1_1"], ReportingRatio.Odds(14, 30, 21, 69).Value);
    }

    [Fact]
    public void Proportional_NoneElsewhere_IsMissing() =>
        Assert.Equal("no jobs to compare", ReportingRatio.Proportional(5, 10, 5, 30).Missing);
}
