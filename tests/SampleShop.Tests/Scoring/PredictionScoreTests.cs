using System.Text.Json.Nodes;
using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.Contest;
using PartsSignal.SampleShop.Scoring;

namespace PartsSignal.SampleShop.Tests.Scoring;

public sealed class PredictionScoreTests
{
    private static readonly string[] Needs = ["valve", "none"];

    // Two calls for a valve. Odds of the valve: tally by complaint 1/4, by complaint on type 1/3, shipped 1/2, best possible 0.8.
    private static readonly TestAnswers Answers = new(Walk(0.5), Walk(0.25), Walk(1.0 / 3), Walk(0.25));

    [Fact]
    public void Compute_HandWorkedCalls_GivesTheSharesOfTheGap()
    {
        JsonObject score = PredictionScore.Compute(Answers, Truths("J1", "J2"));
        Near(-Math.Log(0.8), score["log_loss_best_possible"]);
        Near(Math.Log(2) / Math.Log(3.2), score["gap_closed"]);
        Near(Math.Log(1.5) / Math.Log(2.4), score["gap_closed_from_complaint_on_type"]);
    }

    [Fact]
    public void Compute_WrongDiagnosis_IsJudgedAgainstTheTrueCauseApart()
    {
        JsonObject score = PredictionScore.Compute(Answers, new Dictionary<string, JobTruth>
        {
            ["J1"] = Truth("J1", "none"),
            ["J2"] = Truth("J2", null),
        });
        JsonNode truth = score["against_true_cause"]!;
        Assert.Equal(1, (int)truth["jobs"]!);
        Near(-Math.Log(0.5), truth["log_loss"]);
        Near(-Math.Log(0.75), truth["log_loss_complaint_only"]);
        Near(-Math.Log(0.4), truth["log_loss_best_possible"]);
    }

    [Fact]
    public void Compute_OneTruthMissing_HasNoBestPossible()
    {
        JsonObject score = PredictionScore.Compute(Answers, Truths("J1"));
        Assert.Null(score["log_loss_best_possible"]);
        Assert.Null(score["gap_closed"]);
        Assert.Equal(1, (int)score["against_true_cause"]!["jobs"]!);
    }

    [Fact]
    public void Compute_NoFillCalls_StandApart()
    {
        JsonNode noFill = PredictionScore.Compute(Answers, Truths("J1", "J2"))["no_fill"]!;
        Assert.Equal(1, (int)noFill["against_true_cause"]!["jobs"]!);
        Near(-Math.Log(0.8), noFill["log_loss_best_possible"]);
    }

    [Theory]
    [InlineData(2.0, 1.0, 2.0)]
    [InlineData(null, 1.0, 0.5)]
    [InlineData(2.0, null, 0.5)]
    [InlineData(2.0, 1.0, null)]
    public void GapClosed_NoGapOrAnEndMissing_IsNull(double? plain, double? ours, double? best) => Assert.Null(PredictionScore.GapClosed(plain, ours, best));

    [Fact]
    public void GapClosed_WorseThanPlain_IsNegative() => Assert.Equal(-0.5, PredictionScore.GapClosed(2, 2.5, 1));

    private static void Near(double expected, JsonNode? actual) => Assert.Equal(expected, (double)actual!, 0.000001);

    private static WalkedForecast[] Walk(double valve) => [.. new[] { ("J1", "no_fill"), ("J2", "leaks") }.Select(call => new WalkedForecast(
        new Forecast(call.Item1, new DateOnly(2026, 1, 5), "washer", call.Item2, [valve, 1 - valve], 0) { Needs = Needs, Need = "valve" }, true, true, 1, 1))];

    private static Dictionary<string, JobTruth> Truths(params string[] jobs) => jobs.ToDictionary(j => j, j => Truth(j, "valve"));

    private static JobTruth Truth(string job, string? need) => new(
        job, need, new Dictionary<string, double> { ["valve"] = 0.6, ["none"] = 0.4 }, new Dictionary<string, double> { ["valve"] = 0.8, ["none"] = 0.2 });
}
