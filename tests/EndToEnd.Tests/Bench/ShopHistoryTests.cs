using System.IO.Compression;
using PartsSignal.Pipeline.Bench;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Publishing;

namespace PartsSignal.EndToEnd.Tests.Bench;

public sealed class ShopHistoryTests : IDisposable
{
    private readonly ScratchFolder _folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private KnownShops Shops => new(_folder.Sub("home"));

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Keep_FilesAddedChangedRemoved_SaysWhatChanged()
    {
        ShopFolder shop = Shops.Add("Millrace");
        var history = new ShopHistory(shop, TimeProvider.System);
        Write(shop, "jobs.csv", "a");
        Write(shop, "old.csv", "b");
        Assert.True(history.Keep(1));
        Write(shop, "jobs.csv", "aa");
        Write(shop, "mended/jobs.csv.rejects.csv", "c");
        File.Delete(Path.Combine(shop.Files, "old.csv"));
        Assert.True(history.Keep(2));
        Assert.True(history.Keep(2));
        Assert.Equal([2, 1], history.Entries.Select(e => e.Number));
        Assert.Equal(["jobs.csv changed", "old.csv removed", "mended rows"], history.Changes(history.Entries[0]));
        Assert.Empty(history.Changes(history.Entries[1]));
    }

    [Fact]
    public void Changes_AnswersAndSettings_AreSaidInTheOwnersWords()
    {
        ShopFolder shop = Shops.Add("Millrace");
        var history = new ShopHistory(shop, TimeProvider.System);
        Write(shop, "jobs.csv", "a");
        history.Keep(1);
        Write(shop, "review-complaints.csv", "words,answer\nit sulks,noise\n");
        Write(shop, "shop.json", """{ "vans": [ { "van": "North" } ], "answers": { "jobs.csv/kind": "jobs" }, "sources": [] }""");
        history.Keep(1);
        Assert.Equal(["1 answer about complaints", "1 answer about files", "how files are read changed", "settings changed"], history.Changes(history.Entries[0]));
        Write(shop, "review-complaints.csv", "words,answer\nit sulks,leak\nit grumbles,noise\n");
        Write(shop, "shop.previous.json", "{}");
        history.Keep(1);
        Assert.Equal(["2 answers about complaints"], history.Changes(history.Entries[0]));
        Write(shop, "shop.previous.json", "{ }");
        history.Keep(1);
        Assert.Equal(3, history.Entries.Count);
    }

    // A program can be killed between any two steps of going back.
    [Theory]
    [InlineData(false, true, true)] // before the files moved
    [InlineData(true, false, true)] // between the two moves
    [InlineData(true, true, false)] // before the figures were made
    public async Task GoBack_CutOff_TheFilesOfBeforeAreThereAgain(bool aside, bool files, bool fresh)
    {
        ShopFolder shop = await GoneBackAsync("first");
        string moved = Assert.Single(Directory.EnumerateDirectories(shop.Removed));
        if (fresh)
        {
            Directory.Move(shop.Files, shop.Files + ".new");
        }

        if (files && !aside)
        {
            Directory.Move(moved, shop.Files);
        }

        await new UpdateRollback(shop).RecoverAsync(TimeProvider.System);
        Assert.Equal(["jobs.csv=second"], Read(shop));
        Assert.False(Directory.Exists(shop.Files + ".new"));

        // Once is enough: a later start leaves everything alone.
        await new UpdateRollback(shop).RecoverAsync(TimeProvider.System);
        Assert.Equal(["jobs.csv=second"], Read(shop));
    }

    [Fact]
    public async Task GoBack_FiguresWereMadeBeforeTheProgramEnded_StaysGoneBack()
    {
        ShopFolder shop = await GoneBackAsync("first");
        Directory.CreateDirectory(shop.Output.Root);
        await File.WriteAllTextAsync(shop.Output.RunRecord, "{}", Stop);
        await new UpdateRollback(shop).RecoverAsync(TimeProvider.System);
        Assert.Equal(["jobs.csv=first"], Read(shop));
    }

    [Fact]
    public async Task GoBack_UpdateFails_TheFilesOfBeforeAreThereAgain()
    {
        ShopFolder shop = await GoneBackAsync("");
        Assert.Equal(["jobs.csv="], Read(shop));
        using var work = new BenchWork(TimeProvider.System);
        Assert.True(work.Start(shop, new UpdateReason { GoesBack = true }));
        await work.WhenIdleAsync();
        Assert.Equal(WorkOutcome.Failed, work.Now.Outcome);
        Assert.Equal(["jobs.csv=second"], Read(shop));
        Assert.Null(new UpdateMark(shop).InterruptedMessage);
    }

    [Fact]
    public async Task GoBack_ThenForward_GivesTheSameFiles()
    {
        ShopFolder shop = Shops.Add("Millrace");
        var history = new ShopHistory(shop, TimeProvider.System);
        Write(shop, "jobs.csv", "first");
        history.Keep(1);
        Write(shop, "jobs.csv", "second");
        Write(shop, "shop.json", "{}");
        history.Keep(1);
        await history.GoBackAsync(1, Stop);
        Assert.Equal(["jobs.csv=first"], Read(shop));
        history.Keep(1);
        await history.GoBackAsync(2, Stop);
        Assert.Equal(["jobs.csv=second", "shop.json={}"], Read(shop));
        await Assert.ThrowsAsync<BadInputException>(() => history.GoBackAsync(99, Stop));
        using (await StoreLock.TakeAsync(shop.Output.Root, TimeSpan.Zero, TimeProvider.System, Stop))
        {
            Assert.Equal(BenchWork.Busy, (await Assert.ThrowsAsync<BadInputException>(() => history.GoBackAsync(1, Stop))).Message);
        }

        Assert.Equal(["jobs.csv=second", "shop.json={}"], Read(shop));
    }

    [Fact]
    public void Keep_MoreThanTen_DropsTheOldestAndWhatOnlyTheyHeld()
    {
        ShopFolder shop = Shops.Add("Millrace");
        var history = new ShopHistory(shop, TimeProvider.System);
        Write(shop, "parts.csv", "the same in all");
        for (int i = 0; i < ShopHistory.Most + 3; i++)
        {
            Write(shop, "jobs.csv", $"{i}");
            history.Keep(i);
        }

        Assert.Equal(Enumerable.Range(4, ShopHistory.Most).Reverse(), history.Entries.Select(e => e.Number));
        Assert.Equal(ShopHistory.Most + 1, Directory.EnumerateFiles(Path.Combine(shop.Folder, "history", "contents")).Count());
    }

    [Fact]
    public void Restore_OnAnEmptyComputer_GivesFilesAnswersAndKey()
    {
        ShopFolder shop = Shops.Add("Millrace");
        Write(shop, "jobs.csv", "a");
        Write(shop, "mended/jobs.csv.rejects.csv", "c");
        Directory.CreateDirectory(shop.Output.Root);
        File.WriteAllText(shop.Output.Key, "key");
        new SettledRows(shop.Folder).Add(["0f"]);
        using var zip = new MemoryStream();
        ShopBackup.Write(shop, zip);
        var other = new KnownShops(_folder.Sub("other"));
        ShopFolder restored = ShopBackup.Restore(other, zip);
        Assert.Equal(("Millrace", restored), (restored.Name, other.Open));
        Assert.Equal(Read(shop), Read(restored));
        Assert.Equal("key", File.ReadAllText(restored.Output.Key));
        Assert.Equal(["0f"], new SettledRows(restored.Folder).Keys);
        zip.Position = 0;
        Assert.Equal("Millrace (2)", ShopBackup.Restore(other, zip).Name);
    }

    [Theory]
    [InlineData("../escaped.txt")]
    [InlineData("files/../../escaped.txt")]
    [InlineData("files\\..\\escaped.txt")]
    [InlineData("C:/escaped.txt")]
    public void Restore_ZipThatLeadsOutside_IsRefusedAndNothingWritten(string name)
    {
        using var zip = new MemoryStream();
        using (var archive = new ZipArchive(zip, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (string entry in new[] { "shop-name.txt", name })
            {
                using var text = new StreamWriter(archive.CreateEntry(entry).Open());
                text.Write("x");
            }
        }

        Assert.Throws<BadInputException>(() => ShopBackup.Restore(Shops, zip));
        Assert.Throws<BadInputException>(() => ShopBackup.Restore(Shops, new MemoryStream([1, 2, 3])));
        Assert.Empty(Shops.All);
        Assert.Empty(Directory.EnumerateFiles(_folder.Sub("."), "escaped.txt", SearchOption.AllDirectories));
    }

    // A shop whose log was changed to "second" after an update, and then gone back to what it was.
    private async Task<ShopFolder> GoneBackAsync(string first)
    {
        ShopFolder shop = Shops.Add("Millrace");
        Write(shop, "jobs.csv", first);
        var history = new ShopHistory(shop, TimeProvider.System);
        history.Keep(1);
        Write(shop, "jobs.csv", "second");
        await history.GoBackAsync(1, Stop);
        return shop;
    }

    private static void Write(ShopFolder shop, string name, string text)
    {
        string path = Path.Combine(shop.Files, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
    }

    private static IEnumerable<string> Read(ShopFolder shop) => Directory.EnumerateFiles(shop.Files, "*", SearchOption.AllDirectories)
        .Order(StringComparer.Ordinal).Select(f => $"{Path.GetRelativePath(shop.Files, f).Replace('\\', '/')}={File.ReadAllText(f)}");
}
