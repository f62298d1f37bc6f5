using PartsSignal.Analysis.CrossReference;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Running;
using PartsSignal.Pipeline.Tests.Transform;
using PartsSignal.Pipeline.Understanding;
using PartsSignal.Pipeline.Words;
using PartsSignal.SampleShop.Chance;
using PartsSignal.SampleShop.Dialects;
using PartsSignal.SampleShop.World;

namespace PartsSignal.Pipeline.Tests.DateCodes;

/// <summary>Date codes learned from generated shops, held against how the generator writes serials.</summary>
public sealed class DateCodeTruthTests(ITestOutputHelper output)
{
    private const double LeastInside = 0.99;

    [Fact]
    public async Task Learn_SmallSampleWithoutRules_FindsNoWrongRule()
    {
        await using var sample = new LoadedSample { Jobs = 3000, WithoutDateCodes = true };
        await Judge(sample, fewest: 1);
    }

    [SlowFact]
    public async Task Learn_CommittedSampleWithoutRules_DatesAsWellAsTheGivenRules()
    {
        await using var sample = new LoadedSample { Committed = true, WithoutDateCodes = true };
        await Judge(sample, fewest: 5);
    }

    [SlowFact]
    public async Task Learn_OtherShopsOfThatSize_FindsNoWrongRule()
    {
        foreach (long seed in (long[])[31, 32])
        {
            await using var sample = new LoadedSample { Seed = seed, Jobs = 20000, WithoutDateCodes = true };
            await Judge(sample, fewest: 5);
        }
    }

    [SlowFact]
    public async Task Learn_ShopsInOtherDialects_FindsNoWrongRule()
    {
        foreach (long seed in (long[])[12, 18, 26])
        {
            await JudgeDialect(seed);
        }
    }

    private async Task Judge(LoadedSample sample, int fewest)
    {
        await sample.InitializeAsync();
        DateOnly[] builtDays = [.. sample.Read("true-build-days.sql", r => DateOnly.FromDateTime(r.GetDateTime(0)))];
        var dice = Dice.For(1, "serials");
        foreach (DateCodeRule rule in sample.Report.DateCodes)
        {
            Brand brand = Catalog.World.Families.Select(f => f.Brand).First(b => b.Name.StartsWith(rule.Brand, StringComparison.OrdinalIgnoreCase));
            (int read, int inside) = Inside(rule, builtDays.Select(d => (brand.Serial.Write(d.DayNumber - ShopCalendar.Origin.DayNumber, dice), d)));
            output.WriteLine($"{rule.Basis}: {rule.Rule} {inside} of {read} serials; {rule.Pattern} {rule.YearLetters} {rule.YearOfFirst} {rule.CycleYears} {rule.MonthLetters} {rule.Weeks}");
            Assert.True(brand.Serial.TellsDate && read > 0 && inside >= LeastInside * read, $"wrong: {rule.Rule}");
        }

        var jobs = sample.Read("learned-dates-against-truth.sql", r => (Dated: r.GetInt64(0), Inside: r.GetInt64(1), Aged: r.GetInt64(2)))[0];
        output.WriteLine($"{sample.Report.DateCodes.Count(c => c.InUse)} rules used, {jobs}");
        Assert.True(sample.Report.DateCodes.Count(c => c.InUse) >= fewest);
        Assert.True(jobs.Dated > 0 && jobs.Inside >= LeastInside * jobs.Dated, $"{jobs}");
    }

    private async Task JudgeDialect(long seed)
    {
        string folder = Directory.CreateTempSubdirectory("partssignal-dialect-").FullName;
        try
        {
            DialectMaker.Write(seed, folder);
            string input = Path.Combine(folder, "in");
            var place = new OutputFolder(Path.Combine(folder, "out"));
            LoadReport report = await ShopLoad.RunAsync(input, place, ProposedMaps.Complete(input, ShopFile.Load(input), TestContext.Current.CancellationToken).Settings, TimeProvider.System, null, TestContext.Current.CancellationToken);
            var shop = new ShopHistory(seed, DialectPicker.Pick(seed));
            Assert.NotEmpty(report.DateCodes);
            foreach (DateCodeRule rule in report.DateCodes)
            {
                (int read, int inside) = Inside(rule, shop.Machines
                    .Where(m => CompactKey.From(m.Model.Brand) == CompactKey.From(rule.Brand))
                    .Select(m => (m.Serial, DateOnly.FromDayNumber(m.Made))));
                output.WriteLine($"dialect {seed}, {rule.Basis}: {rule.Rule} {inside} of {read} machines, {rule.JobsAged} jobs");
                Assert.True(read > 0 && inside >= LeastInside * read, $"wrong: {rule.Rule}");
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static (int Read, int Inside) Inside(DateCodeRule rule, IEnumerable<(string Serial, DateOnly Built)> serials)
    {
        SerialCodes codes = SerialCodes.None.With([rule.ToText()]);
        int read = 0, inside = 0;
        foreach ((string serial, DateOnly built) in serials)
        {
            IReadOnlyList<BuildInterval> candidates = codes.Read(rule.Brand, serial, SerialCodes.Horizon).Candidates;
            read += candidates.Count > 0 ? 1 : 0;
            inside += candidates.Any(c => c.From <= built && built <= c.To) ? 1 : 0;
        }

        return (read, inside);
    }
}
