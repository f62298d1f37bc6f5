using PartsSignal.Analysis.Prediction;

namespace PartsSignal.Analysis.Tests.Prediction;

public sealed class BackOffTests
{
    [Fact]
    public void Towards_ThreeLevels_GivesTheReferenceShares()
    {
        Oracle oracle = Oracle.Named("hierarchical_backoff");
        double[] alpha = Oracle.Numbers(oracle.Inputs["alpha"]);
        int[] Counts(string level) => Oracle.Wholes(oracle.Inputs["counts"]![level]);
        double[] global = Smoothing.Towards(Counts("global"), alpha[2], Smoothing.Uniform(3));
        double[] complaint = Smoothing.Towards(Counts("complaint"), alpha[1], global);
        oracle.Close(oracle.Expected["p_global"], global);
        oracle.Close(oracle.Expected["p_complaint"], complaint);
        oracle.Close(oracle.Expected["p_final"], Smoothing.Towards(Counts("family+complaint"), alpha[0], complaint));
    }

    [Fact]
    public void Odds_UnseenModelAndFamily_AreThoseOfTheType()
    {
        BackOffModel model = BackOffTrainer.Train(Jobs());
        Call known = Call("washer", "F1", "no_fill"), unseen = Call("washer", "F9", "no_fill");
        double[] ofType = BackOffTrainer.Train(Jobs(), BackOffLevel.ComplaintOnType).Odds(unseen);
        Assert.Equal(1, model.Odds(known).Sum(), 12);
        Assert.Equal(BackOffLevel.TypeComplaint, model.EvidenceFor(unseen).Last(e => e.Jobs > 0 && !e.Level.Contains("age", StringComparison.Ordinal)).Level);
        Assert.Equal(ofType.Length, model.Odds(unseen).Length);
        Assert.All(model.Odds(unseen).Zip(ofType), p => Assert.Equal(p.Second, p.First, 1));
    }

    [Fact]
    public void Train_OneNeedOnly_IsCertainOfIt()
    {
        BackOffModel model = BackOffTrainer.Train([.. Jobs().Select(j => j with { Need = "none" })]);
        Assert.Equal([1.0], model.Odds(Call("range", null, "leak")));
    }

    [Fact]
    public void Train_NoJobs_KnowsNoNeed() => Assert.Empty(BackOffTrainer.Train([]).Odds(Call("washer", null, "no_fill")));

    private static Call Call(string type, string? family, string kind) =>
        new() { ApplianceType = type, ModelFamily = family, ModelNumber = family, ComplaintKind = kind };

    private static ClosedCall[] Jobs() =>
    [
        .. Enumerable.Range(0, 120).Select(i => new ClosedCall(
            $"J{i}", new DateOnly(2024, 1, 1), new DateOnly(2024, 1, 2), null,
            i % 3 == 0 ? "none" : i % 5 == 0 ? "level_switch" : "inlet_valve",
            Call("washer", i % 2 == 0 ? "F1" : "F2", i % 4 == 0 ? "leak" : "no_fill"))),
    ];
}
