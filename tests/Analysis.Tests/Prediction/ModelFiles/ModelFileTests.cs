using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.Contest;
using PartsSignal.Analysis.Prediction.LogOdds;
using PartsSignal.Analysis.Prediction.ModelFiles;

namespace PartsSignal.Analysis.Tests.Prediction.ModelFiles;

public sealed class ModelFileTests
{
    private static readonly ClosedCall[] Calls = [.. new TestShop(9).Jobs(600, new DateOnly(2022, 1, 1)).Select(j => j.Call)];

    private static readonly Lazy<byte[]> Written = new(() => Write(Model("log_odds")));

    public static readonly TheoryData<string> Names = ["complaint_only", "back_off", "log_odds", "stack"];

    [Theory]
    [MemberData(nameof(Names))]
    public void Read_WhatWasWritten_GivesTheSameOddsToTheLastDigit(string name)
    {
        ShippedModel model = Model(name), again = Read(Write(model));
        Assert.Equal(model.Needs, again.Needs);
        Assert.Equal(model.LearnedTo, again.LearnedTo);
        Assert.Equal(model.Carry95.ByKind, again.Carry95.ByKind);
        Assert.Equal(0.94, again.Carry95.For("washer", "leak"));
        Assert.Equal(model.Carry80.Overall, again.Carry80.Overall);
        Assert.All(Calls.Take(50), c => Assert.Equal(model.Odds(c.Call), again.Odds(c.Call)));
        var untyped = new Call { ComplaintKind = "leak", ComplaintText = "leaking" };
        Assert.Equal(model.TypesOf(untyped), again.TypesOf(untyped));
        Assert.Equal(model.Odds(untyped), again.Odds(untyped));
        Assert.Equal(model.Counts.EvidenceFor(Calls[0].Call), again.Counts.EvidenceFor(Calls[0].Call));
    }

    [Fact]
    public void Write_TrainedTwice_GivesTheSameBytes() => Assert.Equal(Written.Value, Write(Model("log_odds")));

    [Theory]
    [InlineData(3)]
    [InlineData(40)]
    [InlineData(4_000)]
    public void Read_FileCutShort_SaysSo(int length)
    {
        byte[] bytes = Written.Value[..length];
        Assert.Throws<InvalidDataException>(() => Read(bytes));
    }

    private static ShippedModel Model(string name)
    {
        IContender contender = new IContender[] { new ComplaintOnlyContender(), new BackOffContender(), new LogOddsContender(), new StackedContender([new BackOffContender(), new LogOddsContender()], [0.2, 0.9]) }.Single(c => c.Name == name);
        IPredictor predictor = contender.Train(Calls);
        return new ShippedModel
        {
            Contender = name,
            LearnedTo = new DateOnly(2022, 5, 1),
            Jobs = Calls.Length,
            Predictor = predictor,
            Types = TypeReader.Learn(Calls),
            Counts = BackOffTrainer.Train(Calls),
            Temperature = 1.05,
            Carry80 = new CarryLimits(0.8, 0.7, new Dictionary<string, double>(), new Dictionary<string, double>(), 30),
            Carry95 = new CarryLimits(0.95, 0.96, new Dictionary<string, double> { ["leak"] = 0.97 }, new Dictionary<string, double> { [CarryLimits.Cell("washer", "leak")] = 0.94 }, 30),
        };
    }

    private static byte[] Write(ShippedModel model)
    {
        using var stream = new MemoryStream();
        ModelFile.Write(stream, model);
        return stream.ToArray();
    }

    private static ShippedModel Read(byte[] bytes)
    {
        using var stream = new MemoryStream(bytes);
        return ModelFile.Read(stream);
    }
}
