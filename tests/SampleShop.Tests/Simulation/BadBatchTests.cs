using PartsSignal.SampleShop.Simulation;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Tests.Simulation;

public sealed class BadBatchTests(LivedArea area)
{
    [Fact]
    public void Run_BadBatch_ShowsAsARise()
    {
        int before = Calls(ShopCalendar.Day(2023, 7, 1), ShopCalendar.Day(2024, 7, 1));
        int lately = Calls(ShopCalendar.Day(2025, 7, 1), ShopCalendar.Day(2026, 1, 1));
        Assert.True(lately / 6.0 > 2.5 * (before / 12.0), $"{before} in twelve months, then {lately} in six");
    }

    [Fact]
    public void Run_BadBatch_OtherFamiliesStayAsTheyWere()
    {
        int before = Others(ShopCalendar.Day(2023, 7, 1), ShopCalendar.Day(2024, 1, 1));
        int lately = Others(ShopCalendar.Day(2025, 7, 1), ShopCalendar.Day(2026, 1, 1));
        Assert.InRange(lately / (double)before, 0.5, 1.8);
    }

    private int Calls(int from, int to) => area.Log.Jobs.Count(j => IsValve(j) && j.Unit.Family.Code == Faults.BatchFamily && j.OpenedDay >= from && j.OpenedDay < to);

    private int Others(int from, int to) => area.Log.Jobs.Count(j => IsValve(j) && j.Unit.Family.Code != Faults.BatchFamily && j.OpenedDay >= from && j.OpenedDay < to);

    private static bool IsValve(Job job) => job.Unit.Family.Causes[job.TrueCause].Cause.Name == Faults.BatchComponent;
}
