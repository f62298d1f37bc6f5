using System.Diagnostics;

namespace PartsSignal.EndToEnd.Tests.Crashes;

/// <summary>
/// The program killed at random moments, again and again over the same output folder, with two shops in turn: what can
/// be read is always one shop or the other, and the next run that is let to end leaves what a clean one leaves.
/// </summary>
public sealed class KilledRunTests
{
    private const int BetweenWholeRuns = 10;

    // The plain run has each state that a killed program can leave (StoreSwapTests, OutputTransactionTests), and a bench that is killed.
    [LongFact]
    public Task Load_KilledAtAFewMoments_StoreIsWhole() => KillAsync(3, "load");

    [SlowFact]
    public Task Run_KilledAtThreeHundredMoments_StoreBooksAndResultsAreWhole() => KillAsync(300, "load", "run");

    private static async Task KillAsync(int kills, params string[] verbs)
    {
        using var folder = new ScratchFolder();
        string[] shops = [folder.Sub("shop-a"), folder.Sub("shop-b")];
        string[] clean = [folder.Sub("clean-a"), folder.Sub("clean-b")];
        string output = folder.Sub("out");
        for (int i = 0; i < 2; i++)
        {
            Assert.Equal(0, (await Partssignal.RunAsync("sample", "--jobs", "200", "--seed", $"{i + 3}", "--output", shops[i])).ExitCode);
        }

        TimeSpan[] lives = new TimeSpan[verbs.Length];
        foreach ((int v, string verb) in verbs.Index())
        {
            // The second in a process of its own: how long that lives is how long the ones to kill may live.
            Assert.Equal(0, (await Partssignal.RunAsync(verb, "--input", shops[0], "--out", clean[0])).ExitCode);
            long started = Stopwatch.GetTimestamp();
            Assert.Equal(0, await ProgramProcess.RunAsync(null, verb, "--input", shops[1], "--out", clean[1]));
            lives[v] = Stopwatch.GetElapsedTime(started);
        }

        OutputState[] whole = [OutputState.Of(clean[0]), OutputState.Of(clean[1])];
        Assert.NotEqual(whole[0].Store, whole[1].Store);
        var random = new Random(20_261_031);
        for (int kill = 1; kill <= kills; kill++)
        {
            int shop = random.Next(2);
            int verb = random.Next(verbs.Length);
            await ProgramProcess.RunAsync(lives[verb] * random.NextDouble(), verbs[verb], "--input", shops[shop], "--out", output);
            OutputState left = Directory.Exists(output) ? OutputState.Of(output) : new OutputState("", null, "");
            Assert.Contains(left.Store, (string[])["", whole[0].Store, whole[1].Store]);
            Assert.Contains(left.Books, (string?[])[null, whole[0].Books, whole[1].Books]);
            if (kill % BetweenWholeRuns == 0 || kill == kills)
            {
                Assert.Equal(0, (await Partssignal.RunAsync(verbs[^1], "--input", shops[shop], "--out", output)).ExitCode);
                Assert.Equal(whole[shop], OutputState.Of(output));
                Assert.Empty(OutputState.Leftovers(output));
            }
        }
    }
}
