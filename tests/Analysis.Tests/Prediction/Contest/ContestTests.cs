using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.Contest;

namespace PartsSignal.Analysis.Tests.Prediction.Contest;

public sealed class ContestTests
{
    private static readonly DateOnly Start = new(2021, 1, 1);
    private static readonly IContender[] Own = [new ComplaintOnlyContender(), new BackOffContender(), new LogOddsContender()];

    [Fact]
    public void For_ThreeYears_LearnsCalibratesChoosesAndTestsInThisOrder()
    {
        ClosedCall[] calls = Calls(3_000, 3_000 / 1095.0);
        TimeSplit times = TimeSplit.For(calls, new ContestOptions())!;
        Assert.Equal(times.Calibration.To, times.Validation.From);
        Assert.Equal(times.Validation.To, times.Test.From);
        Assert.Equal(calls[^1].OpenedOn.AddDays(1), times.Test.To);
        Assert.Equal(times.Test.From, times.Folds[2].From);
        Assert.Equal(times.Test.To, times.Folds[^1].To);
    }

    [Fact]
    public void Known_JobsClosedLaterOrOfAJudgedUnit_AreKeptOut()
    {
        var span = new DateRange(new DateOnly(2024, 2, 1), new DateOnly(2024, 3, 1));
        ClosedCall Job(string id, string unit, int month, int day, int open) =>
            new(id, new DateOnly(2024, month, day), new DateOnly(2024, month, day).AddDays(open), unit, "none", new Call());
        ClosedCall[] calls = [Job("known", "A", 1, 2, 3), Job("closed later", "B", 1, 28, 9), Job("same unit", "C", 1, 3, 1), Job("judged", "C", 2, 5, 1)];
        Assert.Equal(["known"], TimeSplit.Known(calls, span).Select(c => c.JobId));
        Assert.Equal(["judged"], TimeSplit.Within(calls, span).Select(c => c.JobId));
    }

    [Fact]
    public void Learn_EnoughJobs_ShipsTheBestAndJudgesItOnMonthsItNeverSaw()
    {
        LearningResult learned = PartLearner.Learn(Calls(5_000, 5), new ContestOptions(), Own);
        Assert.Equal(LogOddsContender.ContenderName, learned.Entries.Single(e => e.Ships).Name);
        Assert.Contains("all", learned.Entries.Single(e => e.Behind.Value == 0).Wins);
        string[] won = [.. learned.Entries.SelectMany(e => e.Wins)];
        Assert.Equal(won.Distinct(), won);
        Assert.Superset(new HashSet<string> { "all", "type:dryer", "type:washer" }, won.ToHashSet());
        TestFigures figures = learned.Answers!.Judge();
        Assert.True(figures.Shipped.LogLoss < figures.BackOff.LogLoss && figures.BackOff.LogLoss < figures.ComplaintOnly.LogLoss);
        Assert.InRange(figures.Coverage95!.Value, 0.92, 0.98);
        Assert.InRange(figures.Coverage80!.Value, 0.75, 0.85);
        Assert.InRange(figures.Shipped.CalibrationError!.Value, 0, 0.05);
    }

    [Fact]
    public void Learn_ThreeHundredJobs_IsNoWorseThanTheBackOff()
    {
        ClosedCall[] all = Calls(2_300, 0.8);
        LearningResult learned = PartLearner.Learn(all[..300], new ContestOptions());
        IPredictor backOff = new BackOffContender().Train(all[..300]);
        Assert.True(Loss(learned.Model, all[300..]) <= Loss(backOff, all[300..]) + 0.005);
    }

    [Fact]
    public void Make_SmallShopsWhereTypesDoNotMatter_ComplaintAloneShipsOnlyIfItIsTheLowest()
    {
        // Where types do not matter, complaint alone is the truth: it is often a little behind by chance, and then too another ships.
        int hidden = 0;
        for (int shop = 0; shop < 6; shop++)
        {
            ClosedCall[] calls = TypesThatDoNotMatter(shop);
            ContestEntry[] entries = [.. ContenderChoice.Make(calls, Own, TimeSplit.For(calls, new ContestOptions())!, 1).Entries];
            ContestEntry alone = entries.Single(e => e.Name == ComplaintOnlyContender.ContenderName);
            Assert.Equal(1, entries.Count(e => e.Ships));
            Assert.True(!alone.Ships || alone.Behind.Value == 0);
            hidden += alone.Behind is { Value: > 0, Lower: <= 0 } ? 1 : 0;
        }

        Assert.NotEqual(0, hidden);
    }

    [Fact]
    public void Make_NoJobToJudge_TheBackOffShips()
    {
        ClosedCall[] calls = Calls(600, 1);
        TimeSplit times = TimeSplit.For(calls, new ContestOptions())!;
        var later = new DateRange(times.Test.To, times.Test.To.AddDays(180));
        ChoiceResult choice = ContenderChoice.Make(calls, Own, times with { Validation = later }, 1);
        Assert.Equal(BackOffContender.ContenderName, choice.Entries.Single(e => e.Ships).Name);
    }

    [Fact]
    public void Learn_FutureJobsLeftOut_ChangesNothingBeforeThem()
    {
        ClosedCall[] all = Calls(2_000, 4);
        TimeSplit times = TimeSplit.For(all, new ContestOptions())!;
        ClosedCall[] cut = [.. all.Where(c => c.OpenedOn < times.Test.From)];
        var before = ContenderChoice.Make(all, Own, times, 1);
        var after = ContenderChoice.Make(cut, Own, times, 1);
        Assert.Equal(before.Entries.Select(e => e.Scores), after.Entries.Select(e => e.Scores));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(40)]
    public void Learn_FewJobs_SaysSoAndTheBackOffAnswers(int jobs)
    {
        LearningResult learned = PartLearner.Learn(Calls(jobs, 1), new ContestOptions(), Own);
        Assert.NotNull(learned.Note);
        Assert.Equal(BackOffContender.ContenderName, learned.Model.Contender);
        double[] odds = learned.Model.Odds(new Call { ApplianceType = "washer", ComplaintKind = "no_fill" });
        Assert.Equal(jobs == 0 ? 0 : 1, odds.Sum(), 9);
    }

    [Fact]
    public void Learn_OneNeedOnly_AnswersIt()
    {
        LearningResult learned = PartLearner.Learn([.. Calls(1_200, 2).Select(c => c with { Need = "none" })], new ContestOptions());
        Assert.Equal(["none"], learned.Model.Needs);
        Assert.Equal(1, learned.Model.Odds(new Call())[0], 9);
    }

    private static ClosedCall[] TypesThatDoNotMatter(int seed)
    {
        var draw = new Random(seed);
        string[] types = ["washer", "dryer"], kinds = ["no_fill", "leak"], needs = ["inlet_valve", "hose", "control_board"];
        return [.. Enumerable.Range(0, 400).Select(i =>
        {
            int kind = draw.Next(2);
            DateOnly day = Start.AddDays(2 * i);
            return new ClosedCall($"J{i}", day, day.AddDays(1), $"U{i}", needs[draw.NextDouble() < 0.6 ? kind : draw.Next(3)], new Call { ApplianceType = types[draw.Next(2)], ComplaintKind = kinds[kind] });
        })];
    }

    private static double Loss(IPredictor predictor, IReadOnlyList<ClosedCall> calls) =>
        Scores.From(Forecasting.Run(predictor, calls)).LogLoss!.Value;

    private static ClosedCall[] Calls(int jobs, double perDay) => [.. new TestShop(21).Jobs(jobs, Start, perDay).Select(j => j.Call)];
}
