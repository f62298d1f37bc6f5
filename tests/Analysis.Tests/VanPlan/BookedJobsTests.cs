using PartsSignal.Analysis.CheckOrder;
using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.Answers;
using PartsSignal.Analysis.Prediction.Contest;
using PartsSignal.Analysis.Prediction.ModelFiles;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.Vocabulary;

namespace PartsSignal.Analysis.Tests.VanPlan;

public sealed class BookedJobsTests
{
    private static readonly DateOnly Day = new(2026, 3, 31);
    private static readonly Call NoFill = new() { ApplianceType = "washer", ModelFamily = "F1", ComplaintKind = "no_fill" };

    [Fact]
    public void Of_NoFillCall_NeedsWhatTheTechnicianWouldBeTold()
    {
        ShippedModel model = Model();
        BookedJobs booked = BookedJobs.Create([Open("B1")], Day, model, Facts, new AnswerOptions());
        BookedNeed need = Assert.Single(booked.Needs);
        BookedPart part = Assert.Single(need.Parts);
        Assert.Equal(("P-1", 2), (part.PartNumber, part.Quantity));
        double[] odds = model.Odds(NoFill);
        Assert.Equal(odds[model.Needs.ToList().IndexOf("inlet_valve")], part.Chance, 12);
        Assert.Equal(odds[model.Needs.ToList().IndexOf("none")], need.NoPart, 12);
        Assert.Equal("In the whole shop, 1 call is not visited yet: see the list 'booked'", booked.Note);
    }

    [Fact]
    public void Of_LaterForgottenOrderedOrNobodysCalls_HaveNoPart()
    {
        BookedCall[] open =
        [
            Open("later") with { OpenedOn = Day.AddDays(1) },
            Open("forgotten") with { OpenedOn = Day.AddDays(-BookedJobs.LongestWait) },
            Open("ordered") with { Outcome = Outcome.PartOrdered },
            Open("nobody") with { Van = null },
        ];
        BookedJobs booked = BookedJobs.Create(open, Day, Model(), Facts, new AnswerOptions());
        Assert.Empty(booked.Calls);
        Assert.Equal("no booked jobs", booked.Note);
    }

    [Fact]
    public void Of_JobWithAPartOnOrder_WaitsAndIsNoDemand()
    {
        BookedCall[] open =
        [
            Open("to come"),
            Open("waits") with { PartOrderedOn = Day.AddDays(-1) },
            Open("said so") with { Outcome = Outcome.PartOrdered },
            Open("ordered later") with { PartOrderedOn = Day.AddDays(1) },
            Open("visited") with { IsVisited = true },
        ];
        BookedJobs booked = BookedJobs.Create(open, Day, Model(), Facts, new AnswerOptions());
        Assert.Equal(["to come", "ordered later"], booked.Needs.Select(n => n.JobId));
        Assert.Equal(["waits", "said so"], booked.Waiting.Select(c => c.JobId));
        Assert.Equal(["waits", "said so"], booked.Create(new HashSet<string> { "1" }).Waiting.Select(c => c.JobId));
        Assert.Empty(booked.Create(new HashSet<string> { "2" }).Waiting);
    }

    [Fact]
    public void Of_NoPredictor_LeavesThemOutAndSaysSo()
    {
        BookedJobs booked = BookedJobs.Create([Open("B1")], Day, null, Facts, new AnswerOptions());
        Assert.Empty(booked.Needs);
        Assert.Contains("no predictor", booked.Note, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_PredictorThatLearnedFromLaterDays_IsNotAsked()
    {
        BookedJobs booked = BookedJobs.Create([Open("B1") with { OpenedOn = new DateOnly(2024, 1, 5) }], new DateOnly(2024, 1, 6), Model(), Facts, new AnswerOptions());
        Assert.Empty(booked.Needs);
        Assert.Contains("learned from days after", booked.Note, StringComparison.Ordinal);
    }

    private static BookedCall Open(string job) => new(job, Day.AddDays(-2), "1", Outcome.Unknown, NoFill);

    private static ShippedModel Model() => PartLearner.Learn(
        [.. Enumerable.Range(0, 40).Select(i => new ClosedCall(
            $"J{i:D2}", new DateOnly(2024, 1, 1).AddDays(i), new DateOnly(2024, 1, 2).AddDays(i), null, i % 4 == 0 ? "none" : "inlet_valve", NoFill))],
        new ContestOptions()).Model;

    private static LookupFacts Facts() => new(
        [("F1", new FamilyPart { PartNumber = "P-1", Component = "inlet_valve", TimesSeen = 9, Quantity = 2 })],
        [], [], [], [], new CheckTable([], []), []);
}
