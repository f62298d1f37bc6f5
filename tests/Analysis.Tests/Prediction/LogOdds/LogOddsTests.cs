using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.LogOdds;

namespace PartsSignal.Analysis.Tests.Prediction.LogOdds;

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
        double best = Scores.From(shop.Best(later)).LogLoss!.Value;
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
    [InlineData("Drum not draining, NOT drained; e20", "drum,not,draining,drained")]
    [InlineData("", "")]
    [InlineData(null, "")]
    public void Split_Text_GivesDistinctLowerCaseWords(string? text, string expected) =>
        Assert.Equal(expected, string.Join(',', ComplaintWords.Split(text)));

    [Theory]
    [InlineData("laking badly", "leaki")]
    [InlineData("nto haeting", "not,heati")]
    [InlineData("dishes", "")]
    public void Meant_SlipOfThePen_IsTheWordNextToIt(string text, string expected) =>
        Assert.Equal(expected, string.Join(',', new WordList(["leaking", "not", "heating"]).Meant(text)));

    [Fact]
    public void KindOf_SlipTheTableMissed_IsReadFromEarlierComplaints()
    {
        ClosedCall[] calls = [.. Enumerable.Range(0, 60).Select(i => new ClosedCall($"J{i}", Start, Start, null, "none", new Call
        {
            ComplaintKind = i % 3 == 0 ? "leak" : i % 3 == 1 ? "no_heat" : "other",
            ComplaintText = i % 3 == 0 ? "leaking badly" : i % 3 == 1 ? "does not heat" : "playing up",
        }))];
        LearnedComplaintReader reader = LearnedComplaintReader.Learn(calls, ComplaintWords.Vocabulary(calls, 5, 100));
        Assert.Equal("leak", reader.KindOf(new Call { ComplaintKind = "other", ComplaintText = "laking baddly" }));
        Assert.Equal("other", reader.KindOf(new Call { ComplaintKind = "other", ComplaintText = "playing up again" }));
        Assert.Equal("noise", reader.KindOf(new Call { ComplaintKind = "noise", ComplaintText = "leaking" }));
    }

    private static double LogLoss(IPredictor predictor, IReadOnlyList<(ClosedCall Call, double[] Best)> jobs) =>
        Scores.From([.. jobs.Select(j => Forecasting.Run(predictor, j.Call))]).LogLoss!.Value;
}
