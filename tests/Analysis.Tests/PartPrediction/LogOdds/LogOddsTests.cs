using PartsSignal.Analysis.PartPrediction;
using PartsSignal.Analysis.PartPrediction.BackOff;
using PartsSignal.Analysis.PartPrediction.Calls;
using PartsSignal.Analysis.PartPrediction.Judging;
using PartsSignal.Analysis.PartPrediction.LogOdds;

namespace PartsSignal.Analysis.Tests.PartPrediction.LogOdds;

public sealed class LogOddsTests
{
    private static readonly DateOnly Start = new(2022, 1, 1);

    [Fact]
    public void Train_WorldOfWeibullLives_ClosesMostOfTheGapToTheBestOdds()
    {
        var shop = new TestShop(11);
        var jobs = shop.Jobs(10_000, Start);
        ClosedCall[] learn = [.. jobs.Take(7_500).Select(j => j.Call)];
        var later = jobs.Skip(7_500).ToArray();
        double best = Scores.Of(shop.Best(later)).LogLoss!.Value;
        double plain = LogLoss(BackOffTrainer.Train(learn, BackOffLevel.ComplaintOnly), later);
        double backOff = LogLoss(BackOffTrainer.Train(learn), later);
        double ours = LogLoss(LogOddsTrainer.Train(learn), later);
        Assert.True(ours < backOff && backOff < plain, $"{ours} {backOff} {plain}");
        Assert.InRange((plain - ours) / (plain - best), 0.85, 1.05);
    }

    [Fact]
    public void Train_TwiceOnTheSameJobs_GivesTheSameOddsToTheLastDigit()
    {
        ClosedCall[] learn = [.. new TestShop(3).Jobs(800, Start).Select(j => j.Call)];
        LogOddsModel one = LogOddsTrainer.Train(learn), two = LogOddsTrainer.Train(learn);
        Assert.Equal(one.Weights, two.Weights);
    }

    [Fact]
    public void Odds_AnyCall_SumToOneAndNoneIsImpossible()
    {
        ClosedCall[] learn = [.. new TestShop(3).Jobs(300, Start).Select(j => j.Call)];
        LogOddsModel model = LogOddsTrainer.Train(learn);
        foreach (Call call in (Call[])[learn[0].Call, new Call(), new Call { ApplianceType = "range", ComplaintKind = "sparks" }])
        {
            double[] odds = model.Odds(call);
            Assert.Equal(1, odds.Sum(), 12);
            Assert.All(odds, p => Assert.True(p > 0));
        }
    }

    [Fact]
    public void Train_NoJobs_KnowsNoNeed() => Assert.Empty(LogOddsTrainer.Train([]).Odds(new Call()));

    [Fact]
    public void Train_OneNeedOnly_IsCertainOfIt()
    {
        ClosedCall[] learn = [.. new TestShop(3).Jobs(30, Start).Select(j => j.Call with { Need = "none" })];
        Assert.Equal([1.0], LogOddsTrainer.Train(learn).Odds(learn[0].Call));
    }

    [Theory]
    [InlineData("Drum not draining, NOT drained; e20", "drum,not,drain")]
    [InlineData("", "")]
    [InlineData(null, "")]
    public void Stems_Text_AreDistinctLowerCaseWordBeginnings(string? text, string expected) =>
        Assert.Equal(expected, string.Join(',', ComplaintWords.Stems(text)));

    private static double LogLoss(IPredictor predictor, IReadOnlyList<(ClosedCall Call, double[] Best)> jobs) =>
        Scores.Of([.. jobs.Select(j => Forecasting.Of(predictor, j.Call))]).LogLoss!.Value;
}
