using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.Contest;
using PartsSignal.Analysis.Prediction.LogOdds;

namespace PartsSignal.Analysis.Tests.Prediction.LogOdds;

public sealed class TypeReaderTests
{
    private static readonly DateOnly Start = new(2022, 1, 1);
    private static readonly ClosedCall[] Jobs = [.. new TestShop(21).Jobs(3_500, Start).Select(j => j.Call)];
    private static readonly ClosedCall[] Learned = Jobs[..2_500];

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Odds_TypeNotTold_AreNoWorseThanComplaintShares(bool words)
    {
        ClosedCall[] asked = [.. Jobs[2_500..].Select(j => j with { Call = Hidden(j.Call, words) })];
        IPredictor plain = new LogOddsContender().Train(Learned);
        double direct = Loss(plain, asked), summed = Loss(TypeReader.Over(plain, TypeReader.Learn(Learned)), asked);
        double complaint = Loss(new ComplaintOnlyContender().Train(Learned), asked);
        Assert.True(summed < complaint, $"{summed} against {complaint}");
        Assert.True(summed < direct - 0.01, $"{summed} against {direct}");
    }

    [Fact]
    public void Odds_TypeTold_AreThePredictorsOwn()
    {
        IPredictor plain = new BackOffContender().Train(Learned);
        Assert.Equal(plain.Odds(Jobs[0].Call), TypeReader.Over(plain, TypeReader.Learn(Learned)).Odds(Jobs[0].Call));
    }

    [Fact]
    public void Odds_SumOverTypes_IsTheMixtureByHand()
    {
        IPredictor plain = new BackOffContender().Train(Learned);
        TypeReader reader = TypeReader.Learn(Learned)!;
        Call call = Hidden(Jobs[0].Call, words: false);
        double[] washer = plain.Odds(call with { ApplianceType = "washer" }), dryer = plain.Odds(call with { ApplianceType = "dryer" });
        double isWasher = reader.Of(call).Single(t => t.Type == "washer").Odds;
        Assert.All(TypeReader.Over(plain, reader).Odds(call).Index(), o => Assert.Equal(isWasher * washer[o.Index] + (1 - isWasher) * dryer[o.Index], o.Item, 9));
    }

    [Fact]
    public void Of_WordThatNamesTheType_DecidesIt() =>
        Assert.True(TypeReader.Learn(Learned)!.Of(new Call { ComplaintText = "dryer no start", ComplaintKind = "no_start" })[0] is { Type: "dryer", Odds: > 0.95 });

    [Fact]
    public void Hide_NoType_LeavesOnlyWhatACallerTellsWithoutTheUnit()
    {
        var call = new Call
        {
            ApplianceType = "washer",
            Brand = "Velquora",
            ModelNumber = "WX1",
            ModelFamily = "WX",
            AgeYears = 3,
            AgeBasis = "register",
            MadeOn = Start,
            ComplaintText = "leaks",
            ComplaintKind = "leak",
            ErrorCode = "E20",
            CustomerKind = "household",
            Month = 5,
            Earlier = [new EarlierVisit(20, "drain_pump", "leak")],
        };
        var told = new Call { ComplaintText = "leaks", ComplaintKind = "leak", ErrorCode = "E20", CustomerKind = "household", Month = 5 };
        Assert.Equal(told, Hidden(call, words: true) with { Earlier = told.Earlier });
        Assert.Empty(Hidden(call, words: true).Earlier);
    }

    [Fact]
    public void Learn_OneTypeOrNone_HasNothingToRead() =>
        Assert.Null(TypeReader.Learn([.. Learned.Where(j => j.Call.ApplianceType == "washer")]));

    [Fact]
    public void Learn_SlicesOfTheTestMonths_NoneIsWorseThanComplaintSharesBeyondItsInterval()
    {
        LearningResult learned = PartLearner.Learn([.. new TestShop(22).Jobs(5_000, Start, 5).Select(j => j.Call)], new ContestOptions(), [new ComplaintOnlyContender(), new BackOffContender(), new LogOddsContender()]);
        IReadOnlyList<SliceRow> slices = PredictionTables.SliceTable(learned, 1);
        Assert.Subset(slices.Select(s => s.Slice).ToHashSet(), new HashSet<string> { "all", "no_type", "no_model", "unreadable_complaint", "type:washer", "complaint:leak" });
        Assert.All(slices, s => Assert.True(s.Jobs > 0 && s.AboveLower <= 0, s.ToString()));
        Assert.All(slices.Where(s => s.Jobs >= 600), s => Assert.InRange(s.Coverage95!.Value, 0.91, 1));
    }

    private static double Loss(IPredictor predictor, IReadOnlyList<ClosedCall> calls) => Scores.From(Forecasting.Run(predictor, calls)).LogLoss!.Value;

    private static Call Hidden(Call call, bool words)
    {
        Call told = CallSlice.All.Single(s => s.Name == "no_type").Hide(call);
        return words ? told : told with { ComplaintText = null };
    }
}
