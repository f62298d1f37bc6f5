using PartsSignal.Analysis.CheckOrder;
using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.Answers;
using PartsSignal.Analysis.Prediction.Contest;
using PartsSignal.Analysis.Prediction.ModelFiles;
using PartsSignal.Analysis.Vocabulary;

namespace PartsSignal.Analysis.Tests.Prediction.Answers;

public sealed class AnswerBuilderTests
{
    private static readonly DateOnly Start = new(2024, 1, 1);
    private static readonly Call NoFill = new() { ApplianceType = "washer", ModelFamily = "F1", ModelNumber = "F1-7", ComplaintKind = "no_fill", AgeYears = 6.2 };

    [Fact]
    public void Build_KnownFamily_NamesCurrentPartsOfThatModelAndWhereTheEvidenceLies()
    {
        Answer answer = Build(NoFill);
        Assert.Equal("model", answer.Evidence.Source);
        LikelyNeed valve = answer.Needs.Single(n => n.Need == "inlet_valve");
        Assert.Equal("P-2", valve.Parts[0].Part.PartNumber);
        Assert.Equal("this model", valve.Parts[0].Basis);
        Assert.Equal("V1", valve.Parts[0].Vans.Single().Van);
        Assert.Equal("fill_hose", valve.Companions.Single().With);
        Assert.True(valve.Bring);
        Assert.Equal(1, answer.Needs.Sum(n => n.Odds) + answer.OtherOdds, 9);
    }

    [Fact]
    public void Build_CostsOfTheShop_SetTheOddsFromWhichAPartIsBrought()
    {
        LikelyNeed valve = Build(NoFill).Needs.Single(n => n.Need == "inlet_valve");
        Assert.Equal((12 + 40 * 0.15) / (12 + 40 * 0.15 + 85), valve.BringFrom!.Value, 9);
    }

    [Theory]
    [InlineData(400, 80, 0.2, 1.4, false)] // often, but hardly more often than elsewhere
    [InlineData(10, 3, 0.3, 1.6, false)] // three jobs may be chance
    [InlineData(200, 60, 0.3, 1.6, true)]
    public void Build_Companion_IsNamedOnlyWhereItsLiftConvinces(long jobs, long both, double share, double lift, bool named)
    {
        LookupFacts facts = Facts(new Companion("washer", "inlet_valve", "fill_hose", jobs, both, share, lift));
        LikelyNeed valve = AnswerBuilder.Build(NoFill, Model(Jobs()), facts, new AnswerOptions()).Needs.Single(n => n.Need == "inlet_valve");
        Assert.Equal(named, valve.Companions.Count == 1);
    }

    [Fact]
    public void Build_AnyCall_SetsSayWhatTheOddsAboveThemSay()
    {
        ClosedCall[] jobs = [.. new TestShop(4).Jobs(600, Start).Select(j => j.Call)];
        ShippedModel model = Model(jobs);
        Assert.All(jobs.Take(200), job =>
        {
            Answer answer = AnswerBuilder.Build(job.Call, model, Facts(), new AnswerOptions { LeastOdds = 0, MostNeeds = 99 });
            foreach ((CarryList list, double least) in new[] { (answer.Carry80, 0.6), (answer.Carry95, 0.9) })
            {
                Assert.Equal(list.Needs, answer.Needs.Take(list.Needs.Count).Select(n => n.Need));
                Assert.Equal(answer.Needs.Take(list.Needs.Count).Sum(n => n.Odds), list.Covers, 9);
                Assert.InRange(list.Covers, least, 1.000001);
            }
        });
    }

    [Fact]
    public void Build_TypeNotTold_SumsOverTypesAndSaysSo()
    {
        ClosedCall[] jobs = [.. new TestShop(4).Jobs(600, Start).Select(j => j.Call)];
        Answer answer = AnswerBuilder.Build(new Call { ComplaintKind = "leak", ComplaintText = "water on floor" }, Model(jobs), Facts(), new AnswerOptions());
        Assert.Equal("complaint", answer.Evidence.Source);
        Assert.Equal(jobs.Count(j => j.Call.ComplaintKind == "leak"), answer.Evidence.Jobs);
        LikelyNeed first = answer.Needs[0];
        Assert.Equal(jobs.Count(j => j.Call.ComplaintKind == "leak" && j.Need == first.Need), first.SimilarJobs);
        Assert.StartsWith("The type of appliance is not given.", answer.Notes[0], StringComparison.Ordinal);
        Assert.Contains("washer ", answer.Notes[0], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.09, 3, 0.08, 10, true)] // the likelier one has fewer jobs
    [InlineData(0.53, 28, 0.08, 5, true)] // 28 of 60 are 47 %
    [InlineData(0.45, 28, 0.08, 5, false)]
    public void SeemContradicted_OddsBesideCounts_AreToldApart(double first, int firstJobs, double second, int secondJobs, bool puzzles)
    {
        LikelyNeed Need(string need, double odds, int jobs) => new(need, odds, "", jobs, [], [], null, false);
        Assert.Equal(puzzles, MovedBy.SeemContradicted([Need("a", first, firstJobs), Need("b", second, secondJobs)], 60));
    }

    [Fact]
    public void Build_OddsThatSeemToContradictTheCounts_SayOnceWhatMovedThem()
    {
        ClosedCall[] jobs = [.. new TestShop(4).Jobs(900, Start).Select(j => j.Call)];
        IContender contender = new LogOddsContender();
        ShippedModel model = Model(jobs) with { Predictor = contender.Train(jobs) };
        int said = 0;
        Assert.All(jobs.Take(200), job =>
        {
            Answer answer = AnswerBuilder.Build(job.Call, model, Facts(), new AnswerOptions());
            string[] clauses = [.. answer.Notes.Where(n => n.Contains("the odds differ from the counts of jobs", StringComparison.Ordinal) || n.Contains("so the odds also draw on", StringComparison.Ordinal))];
            Assert.Equal(MovedBy.SeemContradicted(answer.Needs, answer.Evidence.Jobs) ? 1 : 0, clauses.Length);
            said += clauses.Length > 0 && clauses[0].Contains("the age (", StringComparison.Ordinal) ? 1 : 0;
        });
        Assert.True(said > 10, $"{said}");
    }

    [Fact]
    public void Build_SmallShop_GivesSetsRatherThanNone()
    {
        Answer answer = Build(NoFill);
        Assert.InRange(answer.Carry80.Covers, 0.9, 1);
        Assert.NotEmpty(answer.Carry80.Needs);
    }

    [Fact]
    public void Build_UnseenFamily_AnswersFromTheTypeAndSaysSo()
    {
        Answer answer = Build(NoFill with { ModelFamily = "F9", ModelNumber = "F9-1" });
        Assert.Equal("type", answer.Evidence.Source);
        Assert.Contains(answer.Notes, n => n.Contains("F9", StringComparison.Ordinal));
        Assert.All(answer.Needs, n => Assert.Empty(n.Parts));
    }

    [Fact]
    public void Build_NothingKnown_SaysWhatIsMissing()
    {
        Answer answer = Build(new Call());
        Assert.Equal("all jobs", answer.Evidence.Source);
        Assert.Equal(3, answer.Notes.Count);
    }

    [Fact]
    public void Build_TypeUnknownAsInOtherJobs_SaysThatTheyTellNoneEither()
    {
        ClosedCall[] jobs = [.. Jobs().Select(j => j with { Call = new Call { ComplaintKind = "no_fill" } })];
        Answer answer = AnswerBuilder.Build(new Call { ComplaintKind = "no_fill" }, Model(jobs), Facts(), new AnswerOptions());
        Assert.Equal("From 40 jobs that do not tell the type of appliance either.", answer.Evidence.Sentence());
    }

    [Fact]
    public void Build_NoJobsAtAll_SaysTooFewAndStillGivesChecks()
    {
        Answer answer = AnswerBuilder.Build(NoFill, Model([]), Facts(), new AnswerOptions());
        Assert.Empty(answer.Needs);
        Assert.Contains(answer.Notes, n => n.StartsWith("Too few jobs", StringComparison.Ordinal));
        Assert.NotNull(answer.Checks);
    }

    [Fact]
    public void Build_OldWasher_LooksAtTheHosesAndAtWhatFailsSoon()
    {
        IReadOnlyList<WhileThere> advice = Build(NoFill).WhileThere;
        Assert.Equal(["fill_hose", "drain_pump"], advice.Select(a => a.Component));
        Assert.Contains("12 %", advice[1].Figure, StringComparison.Ordinal);
        Assert.Empty(Build(NoFill with { AgeYears = 1 }).WhileThere);
    }

    [Fact]
    public void Build_Checks_PutSafetyFirstAndItsCautionOnTop()
    {
        Answer answer = Build(NoFill);
        Assert.Equal("safety", answer.Checks!.Steps[0].Check.Component);
        Assert.Equal("prove it dead", answer.Cautions[0]);
        Assert.Equal(Safety.Caution, answer.Cautions[^1]);
        Assert.True(answer.Checks.ExpectedMinutes <= answer.Checks.CheapestFirstMinutes + 1e-9);
        Assert.True(answer.Checks.ExpectedMinutes <= answer.Checks.LikeliestFirstMinutes + 1e-9);
    }

    [Theory]
    [InlineData("f1 7", "F1-7", "exact")]
    [InlineData("Fl-7", "F1-7", "look-alike")]
    [InlineData("F1", "", "family")]
    public void Resolve_TypedModel_FindsIt(string typed, string model, string basis)
    {
        (KnownModel Model, string Basis)? found = Facts().Resolve(typed);
        Assert.Equal((model, basis), (found!.Value.Model.ModelNumber, found.Value.Basis));
    }

    [Fact]
    public void Resolve_UnknownModel_IsNone() => Assert.Null(Facts().Resolve("ZZ99"));

    private static Answer Build(Call call) => AnswerBuilder.Build(call, Model(Jobs()), Facts(), new AnswerOptions());

    private static ShippedModel Model(IReadOnlyList<ClosedCall> jobs) => PartLearner.Learn(jobs, new ContestOptions()).Model;

    private static ClosedCall[] Jobs() =>
    [
        .. Enumerable.Range(0, 40).Select(i => new ClosedCall(
            $"J{i:D2}", Start.AddDays(i), Start.AddDays(i + 1), null, i % 4 == 0 ? "none" : i % 4 == 1 ? "level_switch" : "inlet_valve", NoFill)),
    ];

    private static LookupFacts Facts(Companion? companion = null) => new(
        [
            ("F1", new FamilyPart { PartNumber = "P-1", Component = "inlet_valve", TimesSeen = 9 }),
            ("F1", new FamilyPart { PartNumber = "P-2", Component = "inlet_valve", TimesSeen = 3, Price = 40 }),
        ],
        [("F1-7", "P-2", 3)],
        [companion ?? new Companion("washer", "inlet_valve", "fill_hose", 20, 8, 0.4, 3)],
        [new VanPart("P-2", "V1", 2, Start)],
        [new KnownModel("F1-7", "F1", "washer", "Norvik")],
        new CheckTable(
            [
                new ComponentCheck { Component = "inlet_valve", What = "coil", Minutes = 5, Opening = "top" },
                new ComponentCheck { Component = "level_switch", What = "contacts", Minutes = 3, Opening = "top" },
                new ComponentCheck { Component = "none", What = "tap", Minutes = 1 },
                new ComponentCheck { Component = "safety", What = "prove it dead", Minutes = 1, First = true },
            ],
            [new OpeningWork("washer", "top", 4, "sharp edges")]),
        [new YearRisk("units_seen", "washer", "all", "drain_pump", 6, 0.12, 31)]);
}
