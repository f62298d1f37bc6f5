using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.Contest;
using PartsSignal.Analysis.Prediction.ModelFiles;
using PartsSignal.Analysis.Prediction.OddsPipeline;

namespace PartsSignal.Analysis.Tests.Prediction.Contest;

public sealed class RepeatableLearningTests
{
    private static readonly ClosedCall[] Calls = [.. new TestShop(5).Jobs(1_500, new DateOnly(2022, 1, 1), 1.5).Select(j => j.Call)];

    [Fact]
    public async Task Learn_OneThreadAndTwo_GivesTheSameContestAndTheSameModelBytes()
    {
        (LearningResult one, byte[] pipelineOfOne) = await On(1);
        (LearningResult two, byte[] pipelineOfTwo) = await On(2);
        Assert.Equal(5, one.Entries.Count);
        Assert.Equal(one.Entries.Select(Text), two.Entries.Select(Text));
        Assert.Equal(Bytes(one.Model), Bytes(two.Model));
        Assert.Equal(pipelineOfOne, pipelineOfTwo);
    }

    [Theory]
    [InlineData("back_off")]
    [InlineData("log_odds")]
    public async Task Train_OneThreadAndTwo_GivesTheSameOddsToTheLastDigit(string name)
    {
        async Task<double[][]> Odds(int threads) => await Run(threads, () =>
        {
            var predictor = PartLearner.Contenders.Single(c => c.Name == name).Train(Calls);
            return Calls.Take(100).Select(c => predictor.Odds(c.Call)).ToArray();
        });
        Assert.Equal(await Odds(1), await Odds(2));
    }

    private static Task<(LearningResult Learned, byte[] Pipeline)> On(int threads) => Run(threads, () =>
    {
        LearningResult learned = PartLearner.Learn(Calls, new ContestOptions());
        using var stream = new MemoryStream();
        PartOddsPipeline.Save(stream, learned.Model);
        return (learned, stream.ToArray());
    });

    private static Task<T> Run<T>(int threads, Func<T> work)
    {
        // Loops take the scheduler they are started on, and with it its number of threads.
        TaskScheduler few = new ConcurrentExclusiveSchedulerPair(TaskScheduler.Default, threads).ConcurrentScheduler;
        return Task.Factory.StartNew(work, CancellationToken.None, TaskCreationOptions.DenyChildAttach, few);
    }

    private static string Text(ContestEntry entry) => $"{entry.Name} {entry.Temperature:R} {entry.Scores.LogLoss:R} {entry.Behind.Lower:R} {entry.Behind.Upper:R} {entry.Ships}";

    private static byte[] Bytes(ShippedModel model)
    {
        using var stream = new MemoryStream();
        ModelFile.Write(stream, model);
        return stream.ToArray();
    }
}
