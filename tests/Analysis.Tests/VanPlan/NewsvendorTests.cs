using PartsSignal.Analysis.Statistics.Distributions;
using PartsSignal.Analysis.VanPlan;

namespace PartsSignal.Analysis.Tests.VanPlan;

public sealed class NewsvendorTests
{
    private static readonly Oracle Reference = Oracle.Named("newsvendor_negative_binomial");

    private static Newsvendor Make() => new(
        NegativeBinomialDistribution.FromMean((double)Reference.Inputs["mean"]!, (double)Reference.Inputs["size"]!),
        (double)Reference.Inputs["underage_cost"]!, (double)Reference.Inputs["overage_cost"]!);

    [Fact]
    public void BestStock_ReferenceDemand_EqualsTheReference()
    {
        Reference.Close(Reference.Expected["critical_ratio"], Make().CriticalRatio);
        Assert.Equal((int)Reference.Expected["S_star"]!, Make().BestStock);
    }

    [Fact]
    public void ExpectedCost_ReferenceStocks_EqualTheReference()
    {
        Newsvendor shelf = Make();
        Reference.Close(Reference.Expected["expected_backorders"], [.. Enumerable.Range(0, 9).Select(shelf.ExpectedMissing)]);
        Reference.Close(Reference.Expected["expected_cost"], [.. Enumerable.Range(0, 9).Select(s =>
            Cost(shelf, s, (double)Reference.Inputs["mean"]!, (double)Reference.Inputs["underage_cost"]!, (double)Reference.Inputs["overage_cost"]!))]);
    }

    [Fact]
    public void BestStock_AnyDemand_HasTheLeastExpectedCost()
    {
        for (int i = 1; i < 30; i++)
        {
            var shelf = new Newsvendor(NegativeBinomialDistribution.FromMean(0.2 * i, 0.5 + (0.1 * i)), 80, 3 + i);
            int best = shelf.BestStock;
            Assert.All(Enumerable.Range(0, 40), s => Assert.True(Cost(shelf, best, 0.2 * i, 80, 3 + i) <= Cost(shelf, s, 0.2 * i, 80, 3 + i) + 1e-9));
        }
    }

    private static double Cost(Newsvendor shelf, int stock, double mean, double under, double over) =>
        (under * shelf.ExpectedMissing(stock)) + (over * (stock - mean + shelf.ExpectedMissing(stock)));
}
