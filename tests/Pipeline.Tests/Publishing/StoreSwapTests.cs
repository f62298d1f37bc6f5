using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Publishing;

namespace PartsSignal.Pipeline.Tests.Publishing;

public sealed class StoreSwapTests : IDisposable
{
    private static readonly DateTimeOffset Now = new(2024, 5, 1, 12, 0, 0, TimeSpan.Zero);
    private readonly string _root = Directory.CreateTempSubdirectory("partssignal-store-").FullName;

    private string Current => Path.Combine(_root, "store");

    public void Dispose() => Directory.Delete(_root, recursive: true);

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Commit_ThreeStores_ShowsTheNewestAndKeepsTheOneBefore(bool links)
    {
        var folders = new StoreSwap(Current, links);
        foreach (string text in new[] { "one", "two", "three" })
        {
            Publish(folders, text);
            Assert.Equal(text, File.ReadAllText(Path.Combine(Current, "text")));
        }

        string[] kept = [.. Directory.EnumerateFiles(_root, "text", SearchOption.AllDirectories)
            .Select(File.ReadAllText).Distinct().Order(StringComparer.Ordinal)];
        Assert.Equal(["three", "two"], kept);
    }

    [Fact]
    public void Resolve_ReaderDuringASwap_KeepsItsStore()
    {
        var folders = new StoreSwap(Current, links: true);
        Publish(folders, "one");
        string reader = StoreSwap.Resolve(Current);
        Publish(folders, "two");
        Assert.Equal("one", File.ReadAllText(Path.Combine(reader, "text")));
        Assert.Equal("two", File.ReadAllText(Path.Combine(StoreSwap.Resolve(Current), "text")));
    }

    [Fact]
    public void Repair_HalfWrittenStore_IsRemovedAndTheLastOneStays()
    {
        var folders = new StoreSwap(Current, links: true);
        Publish(folders, "one");
        string half = folders.Begin(Now);
        File.CreateSymbolicLink(Current + ".next", "stores/nowhere");
        new StoreSwap(Current, links: true).Repair();
        Assert.False(Directory.Exists(half));
        Assert.Null(new FileInfo(Current + ".next").LinkTarget);
        Assert.Equal("one", File.ReadAllText(Path.Combine(Current, "text")));
    }

    [Fact]
    public void Repair_KilledBetweenTwoRenames_BringsTheLastStoreBack()
    {
        var folders = new StoreSwap(Current, links: false);
        Publish(folders, "one");
        Directory.Move(Current, Current + ".previous");
        folders.Repair();
        Assert.Equal("one", File.ReadAllText(Path.Combine(Current, "text")));
    }

    [Fact]
    public void Commit_FolderFromBefore_BecomesALink()
    {
        Publish(new StoreSwap(Current, links: false), "one");
        Publish(new StoreSwap(Current, links: true), "two");
        Assert.Equal("two", File.ReadAllText(Path.Combine(Current, "text")));
        Assert.NotNull(new DirectoryInfo(Current).LinkTarget);
    }

    [Fact]
    public void Publish_Tables_ComeBackThroughTheStore()
    {
        using var written = Database.Open();
        foreach (string table in StoreTables.Names)
        {
            StoreTables.CreateEmpty(written, table);
        }

        written.Execute("insert into part_aliases values ('Brix', '77.1', 'AB-100', 'listed', 'a.csv', 2)");
        Assert.Equal(1, StorePublisher.Publish(written, new StoreSwap(Current), TimeProvider.System));
        using var read = Database.Open();
        StoreTables.Attach(read, StoreSwap.Resolve(Current));
        Assert.Equal("AB-100", read.Query("from part_aliases select part_number", r => r.GetString(0)).Single());
        Assert.Equal(0, read.Count("jobs"));
    }

    [Fact]
    public async Task TakeAsync_HeldByAnother_SaysWho()
    {
        using StoreLock held = await StoreLock.TakeAsync(_root, TimeSpan.Zero, TimeProvider.System, CancellationToken.None);
        StoreBusyException refused = await Assert.ThrowsAsync<StoreBusyException>(() =>
            StoreLock.TakeAsync(_root, TimeSpan.FromMilliseconds(1), TimeProvider.System, CancellationToken.None));
        Assert.Contains($"process {Environment.ProcessId} since", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task TakeAsync_ReleasedMeanwhile_GetsIt()
    {
        StoreLock held = await StoreLock.TakeAsync(_root, TimeSpan.Zero, TimeProvider.System, CancellationToken.None);
        Task<StoreLock> second = StoreLock.TakeAsync(_root, TimeSpan.FromMinutes(1), TimeProvider.System, CancellationToken.None);
        held.Dispose();
        (await second).Dispose();
    }

    private static void Publish(StoreSwap folders, string text)
    {
        folders.Repair();
        string folder = folders.Begin(Now);
        File.WriteAllText(Path.Combine(folder, "text"), text);
        folders.Commit(folder);
    }
}
