using PartsSignal.Analysis.BadBatches;
using PartsSignal.Analysis.Statistics.Shrinkage;

namespace PartsSignal.Analysis.Tests.BadBatches;

public sealed class BadBatchTests(ITestOutputHelper output)
{
    private const int Worlds = 200;
    private static readonly EffectGate Gate = new();

    // A batch that never alarmed in any month: 32 of 97 calls under five years of age against 12 of 202.
    [Fact]
    public void Scan_ThirtyTwoOfNinetySevenAgainstTwelveOfTwoHundredTwo_NamesFamilyComponentAndMonths()
    {
        BatchCall[] bad = Even("B", 97, 32, 24, 35);
        BatchCall[] others = [.. Even("O", 101, 6, 0, 23), .. Even("P", 101, 6, 36, 59)];
        BatchCall[] elsewhere = [.. new BatchWorld(4).Calls().Where(c => c.ModelFamily != BatchWorld.BadFamily)];
        BatchUnit[] units = [.. Enumerable.Range(0, 300).Select(i => new BatchUnit($"out{i}", "washer", BatchWorld.BadFamily, BatchWorld.First + i % 60, i < 100))];
        BadBatchTables found = BadBatchTables.Create(new BatchRows([.. bad, .. others, .. elsewhere], units), Gate);
        BadBatch batch = Assert.Single(found.Batches);
        Assert.Equal((BatchWorld.BadFamily, BatchWorld.BadComponent), (batch.ModelFamily, batch.Component));

        // A chance case built just before the batch may be taken in.
        Assert.InRange(batch.BuiltFrom, new DateOnly(2019, 12, 1), new DateOnly(2020, 1, 1));
        Assert.Equal(new DateOnly(2020, 12, 1), batch.BuiltTo);
        Assert.InRange(batch.Cases, 32, 33);
        Assert.InRange(batch.Calls, 97, 102);
        Assert.Equal((44, 299), (batch.Cases + batch.OtherCases, batch.Calls + batch.OtherCalls));
        Assert.True(batch.Q < 1e-3);
        Assert.InRange(batch.UnitsOut!.Value, 60, 65);
        Assert.InRange(batch.UnitsListed!.Value, 24, 26);
        Assert.Equal(batch.Cases, found.Jobs.Count);
        Assert.True(batch.SurvivesCustomer);
    }

    [Fact]
    public void Scan_NoUnitKnown_SaysUnknownNotZero() =>
        Assert.Null(Assert.Single(BadBatchTables.Create(new BatchRows([.. Even("B", 97, 32, 24, 35), .. Even("O", 202, 12, 36, 59)], []), Gate).Batches).UnitsOut);

    [Fact]
    public void Scan_OneCustomersUnits_DoNotSurviveWithoutThem()
    {
        BatchCall[] bad = [.. Even("B", 97, 32, 24, 35).Select(c => c with { CustomerId = c.Component == BatchWorld.BadComponent ? "hotel" : c.CustomerId })];
        BadBatch batch = Assert.Single(BadBatchTables.Create(new BatchRows([.. bad, .. Even("O", 202, 12, 36, 59)], []), Gate).Batches);
        Assert.Equal((32L, false), (batch.LargestCustomerCases, batch.SurvivesCustomer));
    }

    [Fact]
    public void Scan_OneUnitCalledAgainAndAgain_IsOneCase()
    {
        BatchCall[] bad = [.. Even("B", 97, 32, 24, 35).Select(c => c.Component == BatchWorld.BadComponent ? c with { UnitId = "one" } : c)];
        Assert.Empty(BadBatchTables.Create(new BatchRows([.. bad, .. Even("O", 202, 12, 36, 59)], []), Gate).Batches);
    }

    // Components that wear out are more frequent in old build months: that is no bad batch.
    [Fact]
    public void Scan_FamiliesThatOnlyAge_FindsNextToNothing()
    {
        int worlds = Enumerable.Range(0, 10).Count(i => Named(new BatchWorld(100 + i), null).Length > 0);
        Assert.InRange(worlds, 0, 3);
    }

    [Fact]
    public void Scan_BatchInAWorld_IsNamedOnceAYearOfItHasFailed()
    {
        int named = Enumerable.Range(0, 10).Count(i => Right(Named(new BatchWorld(300 + i) { Bad = (12, 23), Families = 6 }, null)));
        Assert.InRange(named, 8, 10);
    }

    [Fact]
    public void Scan_CallsInAnotherOrder_GivesTheSameTables()
    {
        BatchCall[] calls = new BatchWorld(5) { Bad = (12, 23), Families = 4 }.Calls();
        BadBatchTables once = BadBatchTables.Create(new BatchRows(calls, []), Gate);
        new Random(1).Shuffle(calls);
        BadBatchTables again = BadBatchTables.Create(new BatchRows(calls, []), Gate);
        Assert.Equal(once.Batches, again.Batches);
        Assert.Equal(once.Tests, again.Tests);
    }

    [SlowFact]
    public void NothingIsWrong_FalseBatches_StayWithinTheStatedShare()
    {
        int worlds = 0, batches = 0;
        for (int w = 0; w < Worlds; w++)
        {
            int found = Named(new BatchWorld(1000 + w), null).Length;
            worlds += found > 0 ? 1 : 0;
            batches += found;
        }

        output.WriteLine($"{worlds} of {Worlds} worlds without a bad batch had one named, {batches} in all (stated: 10 in 100)");
        Assert.InRange(worlds, 0, (int)(Gate.Q * Worlds));
    }

    [SlowFact]
    public void BadBatch_PowerByMonth()
    {
        int[] months = [24, 30, 36, 48, 60, 72];
        int[] named = new int[months.Length];
        double[] calls = new double[months.Length];
        int wrong = 0, misplaced = 0;
        for (int w = 0; w < Worlds; w++)
        {
            var world = new BatchWorld(5000 + w) { Bad = (12, 23), Families = 6, PerMonth = 110 };
            for (int i = 0; i < months.Length; i++)
            {
                BadBatch[] found = Named(world, months[i]);
                calls[i] += world.Calls(months[i]).Count(c => c is { ModelFamily: BatchWorld.BadFamily, MadeMonth: >= BatchWorld.First + 12 and <= BatchWorld.First + 23 }) / (double)Worlds;
                named[i] += Right(found) ? 1 : 0;
                wrong += found.Count(b => !IsRight(b));
                misplaced += found.Count(b => IsRight(b) && (Off(b.BuiltFrom, 12) > 3 || Off(b.BuiltTo, 23) > 3)) * (i == months.Length - 1 ? 1 : 0);
            }
        }

        output.WriteLine(string.Join("; ", months.Select((m, i) => $"month {m - 12} since the first was built ({calls[i]:0} calls about the batch): named in {named[i]} of {Worlds}"))
            + $"; another family or component named in {wrong} of {Worlds * months.Length} scans; months off by more than a quarter in {misplaced}");
        Assert.InRange(named[^1], 0.95 * Worlds, Worlds);
        Assert.InRange(misplaced, 0, 0.2 * Worlds);
        Assert.InRange(wrong, 0, 2 * Gate.Q * Worlds * months.Length);
    }

    private static int Off(DateOnly day, int month) => Math.Abs(day.Year * 12 + day.Month - 1 - BatchWorld.First - month);

    private static BadBatch[] Named(BatchWorld world, int? months) => [.. BadBatchTables.Create(new BatchRows(world.Calls(months), []), Gate).Batches];

    private static bool Right(BadBatch[] found) => found.Any(IsRight);

    private static bool IsRight(BadBatch batch) => batch.ModelFamily == BatchWorld.BadFamily && batch.Component == BatchWorld.BadComponent
        && batch.BuiltFrom <= new DateOnly(2019, 12, 1) && batch.BuiltTo >= new DateOnly(2019, 1, 1);

    // Calls about units built evenly over some months, one to four years old, with the cases spread among them.
    private static BatchCall[] Even(string name, int calls, int cases, int from, int to) => [.. Enumerable.Range(0, calls).Select(i =>
    {
        int made = BatchWorld.First + from + i * (to - from + 1) / calls;
        bool isCase = (i + 1) * cases / calls > i * cases / calls;
        return new BatchCall(
            $"{name}{i:000}", $"{name}u{i}", $"{name}c{i}", null, "washer", BatchWorld.BadFamily, isCase ? BatchWorld.BadComponent : "c0", made + 14 + i * 7 % 36, made);
    })];
}
