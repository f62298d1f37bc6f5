using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Publishing;
using PartsSignal.Pipeline.Running;

namespace PartsSignal.Pipeline.Tests.Running;

public sealed class OutputTransactionTests : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("partssignal-draft-").FullName;

    private OutputFolder Target => new(_root);

    public void Dispose() => Directory.Delete(_root, recursive: true);

    [Fact]
    public async Task Dispose_NothingCommitted_LeavesWhatWasPublished()
    {
        await PublishAsync("old");
        using (OutputTransaction draft = await BeginAsync())
        {
            Fill(draft.Folder, "new");
        }

        AssertPublished("old");
    }

    [Fact]
    public async Task Commit_Twice_ReplacesEveryPartAndKeepsOtherMonths()
    {
        await PublishAsync("old", month: "2026-01");
        await PublishAsync("new", month: "2026-02");
        AssertPublished("new", month: "2026-02");
        Assert.Equal("old", File.ReadAllText(Path.Combine(Target.Reports, "2026-01", "index.html")));
        Assert.False(File.Exists(Path.Combine(Target.Results, "old.csv")));
        Assert.Equal(["new.csv"], Directory.EnumerateFiles(Target.Van).Select(Path.GetFileName));
        Assert.Equal(["new.csv"], Directory.EnumerateFiles(Target.Review).Select(Path.GetFileName));
    }

    [Theory]
    [InlineData(true, true, "new")]
    [InlineData(true, false, null)]
    [InlineData(false, false, "old")]
    public async Task Commit_IntermediateTablesKeptBefore_StayOnlyWithTheirStore(bool newStore, bool keep, string? expected)
    {
        await PublishAsync("old");
        Write(Target.Intermediate, "old");
        using (OutputTransaction draft = await BeginAsync())
        {
            if (newStore)
            {
                Fill(draft.Folder, "new");
            }

            if (keep)
            {
                Write(draft.Folder.Intermediate, "new");
            }

            draft.Commit();
        }

        Assert.Equal(expected, File.Exists(Target.Intermediate) ? File.ReadAllText(Target.Intermediate) : null);
    }

    [Fact]
    public async Task Begin_KilledWhileFilling_DropsTheDraft()
    {
        await PublishAsync("old");
        string left = Path.Combine(_root, "draft");
        Fill(new OutputFolder(left, Target), "half");
        using (await BeginAsync())
        {
        }

        AssertPublished("old");
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public async Task Begin_KilledWhilePublishing_GoesOnWhereItStopped(int moved)
    {
        await PublishAsync("old");
        string complete = Path.Combine(_root, "draft.complete");
        Fill(new OutputFolder(complete, Target), "new");
        Action[] moves =
        [
            () => Directory.Move(StoreSwap.Resolve(Path.Combine(complete, "store")), Path.Combine(_root, "stores", Path.GetFileName(StoreSwap.Resolve(Path.Combine(complete, "store"))))),
            () => Directory.Move(Target.Results, Path.Combine(_root, "draft.replaced")),
            () => Directory.Move(Path.Combine(complete, "results"), Target.Results),
            () => File.Move(Path.Combine(complete, "run.json"), Target.RunRecord, overwrite: true),
        ];
        foreach (Action move in moves.Take(moved))
        {
            move();
        }

        using (await BeginAsync())
        {
        }

        AssertPublished("new");
    }

    [Fact]
    public async Task Begin_NewFolder_IsReadableByItsOwnerAlone()
    {
        if (OperatingSystem.IsWindows())
        {
            Assert.Skip("Windows keeps rights elsewhere");
            return;
        }

        string inner = Path.Combine(_root, "fresh");
        using OutputTransaction draft = await OutputTransaction.BeginAsync(new OutputFolder(inner), TimeProvider.System, CancellationToken.None);
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(inner));
    }

    private Task<OutputTransaction> BeginAsync() => OutputTransaction.BeginAsync(Target, TimeProvider.System, CancellationToken.None);

    private async Task PublishAsync(string text, string month = "2026-01")
    {
        using OutputTransaction draft = await BeginAsync();
        Fill(draft.Folder, text, month);
        draft.Commit();
    }

    private static void Fill(OutputFolder folder, string text, string month = "2026-01")
    {
        var stores = new StoreSwap(folder.Store, later: folder.Published!.Store);
        string store = stores.Begin(DateTimeOffset.UnixEpoch);
        File.WriteAllText(Path.Combine(store, "text"), text);
        stores.Commit(store);
        Write(Path.Combine(folder.Results, text + ".csv"), text);
        Write(Path.Combine(folder.Van, text + ".csv"), text);
        Write(Path.Combine(folder.Review, text + ".csv"), text);
        Write(Path.Combine(folder.Model, "parts.model"), text);
        Write(Path.Combine(folder.Reports, month, "index.html"), text);
        Write(Path.Combine(folder.Reports, "index.html"), text);
        Write(folder.LookupPage, text);
        Write(folder.RunRecord, text);
    }

    private static void Write(string path, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
    }

    private void AssertPublished(string text, string month = "2026-01")
    {
        string[] published =
        [
            Path.Combine(StoreSwap.Resolve(Target.Store), "text"), Path.Combine(Target.Results, text + ".csv"), Path.Combine(Target.Model, "parts.model"),
            Path.Combine(Target.Reports, month, "index.html"), Path.Combine(Target.Reports, "index.html"), Target.LookupPage, Target.RunRecord,
        ];
        Assert.All(published, path => Assert.Equal(text, File.ReadAllText(path)));
        Assert.Empty(Directory.EnumerateFileSystemEntries(_root, "draft*"));
    }
}
