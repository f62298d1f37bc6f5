using PartsSignal.Pipeline.Publishing;

namespace PartsSignal.EndToEnd.Tests.Crashes;

/// <summary>Disk full, no handles left, a folder that cannot be written: one clear line, and the last good store still answers.</summary>
[Collection(RunSmallShopFixture.Collection)]
public sealed class FaultTests(RunSmallShopFixture shop) : IDisposable
{
    private readonly ScratchFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public Task Load_DiskFull_FailsWithOneLineAndTheNextOneIsFine() => FillDiskAsync("load", 400);

    [SlowFact]
    public async Task Load_DiskFullEarlierAndLater_FailsWithOneLineAndTheNextOneIsFine()
    {
        foreach (int freeKilobytes in (int[])[20, 100, 200, 300, 500, 700, 900, 1100, 2500, 4500])
        {
            await FillDiskAsync("load", freeKilobytes);
        }
    }

    // The disk is full while files are staged, combined, made a store, and once there is a model.
    [SlowFact]
    public async Task Run_DiskFullInEachOfItsParts_FailsWithOneLineAndTheNextOneIsFine()
    {
        foreach (int freeKilobytes in (int[])[50, 2500, 7000, 8500])
        {
            await FillDiskAsync("run", freeKilobytes);
        }
    }

    [Fact]
    public async Task Load_FewHandles_EndsWithoutATrace()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "needs ulimit");
        (int code, string text) = await ProgramProcess.ShellAsync($"ulimit -n 128; exec {ProgramProcess.Shell} load --input '{shop.Input}' --out '{_folder.Sub("out")}'");
        Assert.Contains(code, (int[])[0, 1]);
        Assert.DoesNotContain("   at ", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Load_OutIsAFile_FailsWithOneLine()
    {
        _folder.Write("out", "not a folder");
        Partssignal load = await Partssignal.RunAsync("load", "--input", shop.Input, "--out", _folder.Sub("out"));
        Assert.NotEqual(0, load.ExitCode);
        Assert.Single(load.Error.Trim().Split('\n'));
        Assert.Equal("not a folder", File.ReadAllText(_folder.Sub("out")));
    }

    [Fact]
    public async Task Load_HeldByAnother_SaysByWhomAndTheStoreStillAnswers()
    {
        using var held = await Pipeline.Publishing.StoreLock.TakeAsync(shop.Out, TimeSpan.Zero, TimeProvider.System, CancellationToken.None);
        Partssignal rates = await Partssignal.RunAsync("rates", "--input", shop.Input, "--out", shop.Out);
        Assert.Equal(0, rates.ExitCode);
        StoreBusyException refused = await Assert.ThrowsAsync<StoreBusyException>(() =>
            Pipeline.Publishing.StoreLock.TakeAsync(shop.Out, TimeSpan.Zero, TimeProvider.System, CancellationToken.None));
        Assert.Contains($"process {Environment.ProcessId}", refused.Message, StringComparison.Ordinal);
    }

    private async Task FillDiskAsync(string verb, int freeKilobytes)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "needs a small disk of its own, made with Linux namespaces");
        string error = _folder.Sub("error");
        string disk = Directory.CreateDirectory(_folder.Sub("disk")).FullName;
        (int code, string text) = await ProgramProcess.ShellAsync(
            $$"""
            mount -t tmpfs -o size=60m tmpfs '{{disk}}' || exit 77
            command() { {{ProgramProcess.Shell}} {{verb}} --input '{{shop.Input}}' --out '{{disk}}/out' 2>'{{error}}'; echo "ended with $?, lines of error: $(wc -l <'{{error}}')"; cat '{{error}}'; }
            cp -rp '{{shop.Out}}' '{{disk}}/out'
            rm -r '{{disk}}/out/stage'
            free=$(df -k --output=avail '{{disk}}' | tail -n 1)
            dd if=/dev/zero of='{{disk}}/filler' bs=1k count=$((free - {{freeKilobytes}})) 2>/dev/null
            command
            {{ProgramProcess.Shell}} rates --input '{{shop.Input}}' --out '{{disk}}/out' >/dev/null; echo "the old store answers with $?"
            rm '{{disk}}/filler'
            command
            echo "in the folder:"; ls '{{disk}}/out'
            """,
            ownMounts: true);
        Assert.SkipWhen(code == 77 || text.Contains("unshare failed", StringComparison.Ordinal), "this machine allows no mount namespace");
        Assert.Contains("No space left", text, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", text, StringComparison.Ordinal);
        Assert.Contains("ended with 1, lines of error: 1\n", text, StringComparison.Ordinal);
        Assert.Contains("the old store answers with 0", text, StringComparison.Ordinal);
        Assert.Contains("ended with 0, lines of error: 0\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain("draft", text[text.IndexOf("in the folder:", StringComparison.Ordinal)..], StringComparison.Ordinal);
    }
}
