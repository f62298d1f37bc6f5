using PartsSignal.Benchmarks.Fitting;
using PartsSignal.Pipeline.Understanding;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Understanding.Model;

public sealed class ShippedWeightsTests
{
    private static string Evidence => Path.Combine(RepositoryFolder.Root, "tests", "Benchmarks", "Fitting", "evidence.txt.gz");

    [Fact]
    public void Shipped_Weights_ReadAsWritten() =>
        Assert.Equal(WordTable.ReadDefault("reading-weights.txt"), ReadingModel.Shipped.Text());

    // The shipped weights are those of the committed evidence. Log losses may differ in the last bit elsewhere, so a leaf in a thousand may be off by one.
    [SlowFact]
    public void Shipped_Weights_AreFittedFromTheCommittedEvidence()
    {
        string[] shipped = WordTable.ReadDefault("reading-weights.txt").Split('\n');
        string[] fitted = FittingProgram.Weights(FittingProgram.Load([Evidence])).Split('\n');
        Assert.Equal(shipped.Length, fitted.Length);
        Assert.InRange(shipped.Zip(fitted).Count(l => l.First != l.Second), 0, shipped.Length / 1000);
    }
}
