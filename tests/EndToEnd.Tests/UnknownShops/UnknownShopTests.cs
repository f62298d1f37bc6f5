using System.Globalization;
using PartsSignal.SampleShop.Dialects;

namespace PartsSignal.EndToEnd.Tests.UnknownShops;

/// <summary>Shops in dialects that nothing was fitted to: each table is read right or asked about, hardly ever wrong in silence.</summary>
public sealed class UnknownShopTests
{
    // seeds up to 1000 are for fitting
    private const long FirstSeed = 1001;
    private const long FirstSlowSeed = 2001;

    // The level reached, so that it is not lost; among eight one table more is 2 %, and among a thousand are rarer dialects. The aims
    // are 99 % of kinds right, 1 % of tables and 0.5 % of essential columns silent.
    private static readonly Level Eight = new(0.95, 0.03, 0.008);
    private static readonly Level Twenty = new(0.97, 0.03, 0.008);
    private static readonly Level Thousand = new(0.96, 0.05, 0.012);

    [Fact]
    public Task Inspect_EightDialects_TablesAreRightOrAsked() => HoldAsync(FirstSeed, 8, Eight);

    [LongFact]
    public Task Inspect_TwentyDialects_TablesAreRightOrAsked() => HoldAsync(FirstSeed, 20, Twenty);

    [SlowFact]
    public Task Inspect_ThousandDialects_TablesAreRightOrAsked() => HoldAsync(FirstSlowSeed, 1000, Thousand);

    private static async Task HoldAsync(long first, int dialects, Level level)
    {
        var grades = new List<TableGrade>();
        int questions = 0;
        for (long seed = first; seed < first + dialects; seed++)
        {
            using var folder = new ScratchFolder();
            DialectMaker.Write(seed, folder.Path);
            ShopReading reading = await ShopReading.InspectAsync(folder.Sub("in"));
            questions += reading.Questions.Count;
            IReadOnlyList<TableGrade> shop = TableGrader.Grade(ShopTruth.Load(folder.Sub("truth.json")), reading);
            grades.AddRange(shop);
            foreach (TableGrade silent in shop.Where(g => g.Verdict == Verdict.Silent))
            {
                Say($"seed {seed}, {silent.Table.Name}: {string.Join("; ", silent.SilentFaults)}");
            }
        }

        Verdict[] essential = [.. grades.SelectMany(g => g.Essential)];
        double kinds = Share(grades.Count(g => g.KindRight), grades.Count);
        double silentTables = Share(grades.Count(g => g.Verdict == Verdict.Silent), grades.Count);
        double silentColumns = Share(essential.Count(e => e == Verdict.Silent), essential.Length);
        Say($"{dialects} dialects, {grades.Count} tables: {grades.Count(g => g.Verdict == Verdict.Right)} right, {grades.Count(g => g.Verdict == Verdict.Asked)} asked, {grades.Count(g => g.Verdict == Verdict.Silent)} silent");
        Say($"kinds right {kinds:P1}; essential columns {essential.Count(e => e == Verdict.Right)} right, {essential.Count(e => e == Verdict.Asked)} asked, {essential.Count(e => e == Verdict.Silent)} silent; {Share(questions, dialects):0.0} questions a shop");
        Assert.True(
            kinds >= level.LeastKindsRight && silentTables <= level.MostSilentTables && silentColumns <= level.MostSilentColumns,
            string.Create(CultureInfo.InvariantCulture, $"kinds right {kinds:P1}, silent tables {silentTables:P1}, silent essential columns {silentColumns:P1}"));
    }

    private static double Share(int count, int of) => (double)count / Math.Max(1, of);

    private static void Say(FormattableString text) => TestContext.Current.TestOutputHelper?.WriteLine(text.ToString(CultureInfo.InvariantCulture));

    private sealed record Level(double LeastKindsRight, double MostSilentTables, double MostSilentColumns);
}
