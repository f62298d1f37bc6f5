using PartsSignal.Pipeline.Bench;
using PartsSignal.Pipeline.Commands;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.FullRun;

namespace PartsSignal.EndToEnd.Tests.Privacy;

/// <summary>One person followed through everything: found by name, phone or address, taken out of store, stage and rejects, and kept out.</summary>
public sealed class ForgetTests(ForgettableShop loaded) : IClassFixture<ForgettableShop>
{
    private const string Map = ForgettableShop.Map;
    private const string Jobs = ForgettableShop.Jobs;

    [Fact]
    public Task Forget_CustomerByName_GoneFromStoreStageAndRejectsAndStaysGone() => ForgetAsync("Ottilie Farnsworth");

    [LongTheory]
    [InlineData("07700 900461")]
    [InlineData("12 Lindenmoor Street")]
    public Task Forget_CustomerByPhoneOrAddress_GoneFromStoreStageAndRejectsAndStaysGone(string customer) => ForgetAsync(customer);

    private async Task ForgetAsync(string customer)
    {
        using ScratchFolder folder = loaded.Copy();
        string[] before = Places(folder);
        Assert.Equal(2, before.Distinct().Count());
        string place = before[0];
        Assert.Contains("Farnsworth", Rejects(folder), StringComparison.Ordinal);

        Partssignal forget = await Partssignal.RunAsync("forget", "--customer", customer, "--input", folder.Sub("shop"), "--out", folder.Sub("out"));
        Assert.Equal(0, forget.ExitCode);
        Assert.Contains("Forgotten: 3 rows of 1 file.", forget.Out, StringComparison.Ordinal);
        AssertGone(folder, place);

        // Changed files, another load: still gone. The other customer is where he was.
        folder.Write("shop/jobs.csv", Jobs + "6,2026-09-09,Ottilie Farnsworth,07700 900461,,WX4150-B,dead,fixed\n");
        Assert.Equal(0, (await LoadAsync(folder)).ExitCode);
        AssertGone(folder, place);
        Assert.Contains(before[2], Places(folder));
        Assert.Contains("Rookhope", Rejects(folder), StringComparison.Ordinal);
        Assert.Equal(4, Places(folder).Length);
        Assert.DoesNotContain("Farnsworth", File.ReadAllText(folder.Sub("out/forgotten.txt")), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Forget_Nobody_BadInputAndNothingChanged()
    {
        using ScratchFolder folder = loaded.Copy();
        Partssignal forget = await Partssignal.RunAsync("forget", "--customer", "Nobody Atall", "--input", folder.Sub("shop"), "--out", folder.Sub("out"));
        Assert.Equal(2, forget.ExitCode);
        Assert.False(File.Exists(folder.Sub("out/forgotten.txt")));
        Assert.Equal(2, (await Partssignal.RunAsync("forget", "--input", folder.Sub("shop"), "--out", folder.Sub("out"))).ExitCode);
    }

    // The bench keeps copies of a shop's files: updates to go back to, and files taken away.
    [Fact]
    public async Task Forget_CustomerOfABenchShop_GoneFromItsCopiesToo()
    {
        using var folder = new ScratchFolder();
        ShopFolder shop = new KnownShops(folder.Sub("home")).Add("Millrace");
        File.WriteAllText(Path.Combine(shop.Files, "shop.json"), Map);
        File.WriteAllText(Path.Combine(shop.Files, "jobs.csv"), Jobs);
        folder.Write("home/shops/millrace/removed-files/old.csv", Jobs);
        Assert.True(new ShopHistory(shop, TimeProvider.System).Keep(5));

        using var work = new BenchWork(TimeProvider.System);
        Assert.Throws<BadInputException>(() => CustomerRemoval.Mark(shop.Files, shop.Output, " ", CancellationToken.None));
        Assert.Throws<BadInputException>(() => CustomerRemoval.Mark(shop.Files, shop.Output, "Nobody Atall", CancellationToken.None));
        Assert.Equal(3, CustomerRemoval.Mark(shop.Files, shop.Output, "Ottilie Farnsworth", CancellationToken.None).Rows);
        File.WriteAllText(Path.Combine(shop.Files, "jobs.csv"), string.Concat(Jobs.Split('\n').Where(l => !l.Contains("Farnsworth", StringComparison.Ordinal)).Select(l => l + "\n")));
        var history = new ShopHistory(shop, TimeProvider.System);
        history.Clear();
        Assert.Empty(history.Entries);
        Assert.True(history.IsForgetting);
        Assert.True(work.Start(shop));
        await work.WhenIdleAsync();
        Assert.Equal(WorkOutcome.Done, work.Now.Outcome);
        Assert.All(Directory.EnumerateFiles(shop.Folder, "*", SearchOption.AllDirectories), f => Assert.DoesNotContain("Farnsworth", File.ReadAllText(f), StringComparison.OrdinalIgnoreCase));
        Assert.Single(history.Entries);
        Assert.False(history.IsForgetting);
    }

    // The first update after forgetting keeps the files as they are. Once the owner has taken the customer out of them, the copies go.
    [Fact]
    public async Task Update_ForgottenCustomerTakenOutOfTheFiles_NoCopyKeepsThem()
    {
        using var folder = new ScratchFolder();
        ShopFolder shop = new KnownShops(folder.Sub("home")).Add("Millrace");
        File.WriteAllText(Path.Combine(shop.Files, "shop.json"), Map);
        File.WriteAllText(Path.Combine(shop.Files, "jobs.csv"), Jobs);
        CustomerRemoval.Mark(shop.Files, shop.Output, "Ottilie Farnsworth", CancellationToken.None);
        var history = new ShopHistory(shop, TimeProvider.System);
        history.Clear();
        using var work = new BenchWork(TimeProvider.System);
        await UpdateAsync();
        Assert.NotEmpty(Naming("Farnsworth"));

        // What is set aside stays where it does not name the customer.
        folder.Write("home/shops/millrace/removed-files/before/old.csv", Jobs);
        folder.Write("home/shops/millrace/removed-files/other.csv", "Job,Customer\n1,Nell Loxbeare\n");
        string cleaned = string.Concat(Jobs.Split('\n').Where(l => !l.Contains("Farnsworth", StringComparison.Ordinal)).Select(l => l + "\n"));
        File.WriteAllText(Path.Combine(shop.Files, "jobs.csv"), cleaned);
        await UpdateAsync();
        Assert.Empty(Naming("Farnsworth"));
        Assert.Single(Naming("Loxbeare"));
        HistoryEntry entry = Assert.Single(history.Entries);
        Assert.Equal(2, entry.Number);

        // A later change of the files can be gone back from.
        File.WriteAllText(Path.Combine(shop.Files, "jobs.csv"), cleaned + "7,2026-09-12,Nell Loxbeare,07700 900111,,WX4150-B,dead,fixed\n");
        Assert.True(history.Keep(6));
        new ForgottenCopies(shop, history).Drop(CancellationToken.None);
        Assert.Equal(2, history.Entries.Count);

        // A backup takes the list of the forgotten along, so the customer stays out where it is opened.
        using var zip = new MemoryStream();
        ShopBackup.Write(shop, zip);
        ShopFolder restored = ShopBackup.Restore(new KnownShops(folder.Sub("other")), zip);
        Assert.Equal(File.ReadAllText(shop.Output.Forgotten), File.ReadAllText(restored.Output.Forgotten));
        folder.Write("shop/shop.json", Map);
        folder.Write("shop/jobs.csv", Jobs);
        Assert.Equal(0, (await Partssignal.RunAsync("load", "--input", folder.Sub("shop"), "--out", restored.Output.Root)).ExitCode);
        Assert.DoesNotContain("Farnsworth", string.Concat(Directory.EnumerateFiles(restored.Output.Rejects, "*.csv").Select(File.ReadAllText)), StringComparison.Ordinal);

        async Task UpdateAsync()
        {
            Assert.True(work.Start(shop));
            await work.WhenIdleAsync();
            Assert.Equal(WorkOutcome.Done, work.Now.Outcome);
        }

        string[] Naming(string name) => [.. Directory.EnumerateFiles(shop.Folder, "*", SearchOption.AllDirectories).Where(f => File.ReadAllText(f).Contains(name, StringComparison.OrdinalIgnoreCase))];
    }

    [Fact]
    public async Task Load_KeyLost_NewKeyAllRestagedAndOneLineSaysSo()
    {
        using ScratchFolder folder = loaded.Copy();
        Assert.DoesNotContain("identity.key", loaded.Load.Out, StringComparison.Ordinal);
        string[] before = Places(folder);
        Assert.Equal(0, (await Partssignal.RunAsync("forget", "--customer", "Abel Rookhope", "--input", folder.Sub("shop"), "--out", folder.Sub("out"))).ExitCode);
        File.Delete(folder.Sub("out/identity.key"));
        Partssignal load = await LoadAsync(folder);
        Assert.Equal(0, load.ExitCode);
        Assert.Single(load.Out.Split('\n'), l => l.StartsWith("identity.key was lost: a new one was made and every file was read again.", StringComparison.Ordinal));
        Assert.Contains("forget", load.Out, StringComparison.Ordinal);
        string[] after = Places(folder);
        Assert.Empty(before.Intersect(after));
        Assert.Equal(before.Distinct().Count(), after.Distinct().Count());
    }

    [Fact]
    public async Task Load_RejectsPastTheirAge_RemovedAndNotMadeAgain()
    {
        using var folder = new ScratchFolder();
        folder.Write("shop/shop.json", Map.Replace("{ \"sources\"", "{ \"rejectsDays\": 30, \"sources\"", StringComparison.Ordinal));
        folder.Write("shop/jobs.csv", Jobs);
        Assert.Equal(0, (await LoadAsync(folder)).ExitCode);
        Assert.Contains("after 30 days", File.ReadAllText(folder.Sub("out/rejects/README.txt")), StringComparison.Ordinal);

        // The age counts from when the rows were written, so the clock does too.
        DateTimeOffset written = Directory.EnumerateFiles(folder.Sub("out/rejects"), "*.csv").Max(File.GetLastWriteTimeUtc);
        await LoadAsync(folder, new FixedClock(written.AddDays(29)));
        Assert.Contains("Farnsworth", Rejects(folder), StringComparison.Ordinal);
        await LoadAsync(folder, new FixedClock(written.AddDays(31)));
        Assert.Empty(Rejects(folder));
        await LoadAsync(folder, new FixedClock(written.AddDays(32)));
        Assert.Empty(Rejects(folder));

        // A changed file is read again, and so are the rows that it refuses.
        folder.Write("shop/jobs.csv", Jobs + "6,2026-09-09,Nell Loxbeare,07700 900111,,WX4150-B,dead,fixed\n");
        await LoadAsync(folder, new FixedClock(written.AddDays(0)));
        Assert.Contains("Farnsworth", Rejects(folder), StringComparison.Ordinal);
    }

    private static void AssertGone(ScratchFolder folder, string place)
    {
        Assert.All(OutputTexts.Of(folder.Sub("out")).Where(o => o.File != "forgotten.txt"), o => Assert.DoesNotContain(place, o.Text, StringComparison.Ordinal));
        Assert.DoesNotContain("Farnsworth", Rejects(folder), StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("900461", Rejects(folder), StringComparison.Ordinal);
        Assert.DoesNotContain("Lindenmoor", Rejects(folder), StringComparison.Ordinal);
    }

    private static string[] Places(ScratchFolder folder)
    {
        string staged = Directory.EnumerateFiles(folder.Sub("out/stage"), "staged_jobs.parquet", SearchOption.AllDirectories).Single();
        using PartsSignal.Analysis.Sql.Database database = PartsSignal.Analysis.Sql.Database.Open();
        return [.. database.Query($"from read_parquet({PartsSignal.Analysis.Sql.Database.Literal(staged)}) select coalesce(place_key, '-') order by source_line", r => r.GetString(0))];
    }

    private static string Rejects(ScratchFolder folder) =>
        string.Concat(Directory.EnumerateFiles(folder.Sub("out/rejects"), "*.csv").Select(File.ReadAllText));

    private static Task<Partssignal> LoadAsync(ScratchFolder folder) => Partssignal.RunAsync("load", "--input", folder.Sub("shop"), "--out", folder.Sub("out"));

    private static async Task LoadAsync(ScratchFolder folder, TimeProvider clock)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        Assert.Equal(0, await CommandHost.RunAsync(["load", "--input", folder.Sub("shop"), "--out", folder.Sub("out")], output, error, clock));
    }

    private sealed class FixedClock(DateTimeOffset now) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => now;
    }
}

/// <summary>A shop of two customers, loaded once.</summary>
public sealed class ForgettableShop : IAsyncLifetime
{
    internal const string Map = """{ "sources": [ { "files": "jobs.csv", "kind": "jobs", "columns": { "job_id": "Job", "opened_on": "Opened", "customer_name": "Customer", "phone": "Phone", "address": "Address", "model": "Model", "complaint": "Complaint", "outcome": "Outcome" } } ] }""";

    internal const string Jobs = """
        Job,Opened,Customer,Phone,Address,Model,Complaint,Outcome
        1,2026-08-03,Mrs Ottilie Farnsworth,07700 900461,"12 Lindenmoor Street, Marrowby",WX4150-B,does not fill again,fixed
        2,2026-08-14,Ottilie Farnsworth,+44 7700 900461,,WX4150-B,leaks at the door,fixed
        3,2026-09-01,Abel Rookhope,07700 900999,"3 Tannery Row, Marrowby",WX4150-B,does not fill,fixed
        4,not a day,Ottilie Farnsworth,07700 900461,"12 Lindenmoor Street, Marrowby",WX4150-B,noisy,fixed
        5,not a day,Abel Rookhope,07700 900999,"3 Tannery Row, Marrowby",WX4150-B,noisy,fixed

        """;

    private readonly ScratchFolder _folder = new();

    internal Partssignal Load { get; private set; } = new(-1, "", "");

    public async ValueTask InitializeAsync()
    {
        _folder.Write("shop/shop.json", Map);
        _folder.Write("shop/jobs.csv", Jobs);
        Load = await Partssignal.RunAsync("load", "--input", _folder.Sub("shop"), "--out", _folder.Sub("out"));
        Assert.Equal(0, Load.ExitCode);
    }

    public ValueTask DisposeAsync()
    {
        _folder.Dispose();
        return ValueTask.CompletedTask;
    }

    internal ScratchFolder Copy() => _folder.Copy();
}
