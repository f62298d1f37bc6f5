using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Simulation;

/// <summary>One appliance out there. Changes as its life goes on.</summary>
internal sealed class Unit
{
    public required ModelFamily Family { get; init; }

    public required Model Model { get; init; }

    public required int BuiltDay { get; init; }

    public required int InstalledDay { get; init; }

    public required Customer Owner { get; init; }

    public required string Serial { get; init; }

    /// <summary>Day it is scrapped or leaves the area for a reason of its own.</summary>
    public int EndDay { get; set; }

    /// <summary>Day on which the area looks at it again; -1: none.</summary>
    public int AwaitedOn { get; set; } = -1;

    /// <summary>Next failure of each cause; int.MaxValue: beyond the last day, or failed and waiting.</summary>
    public required int[] FailsOn { get; init; }

    /// <summary>Years of household use per year: the contract customer's machines run four times as much.</summary>
    public double Pace => Owner.IsContract ? Customer.ContractPace : 1;

    public int BuildMonth => ShopCalendar.MonthIndex(BuiltDay);

    public double AgeOn(int day) => (day - InstalledDay) / ShopCalendar.DaysPerYear;

    public bool IsGone(int day) => day >= EndDay;

    /// <summary>First day on which anything happens to it.</summary>
    public int NextDay()
    {
        int next = EndDay;
        foreach (int day in FailsOn)
        {
            next = Math.Min(next, day);
        }

        return next;
    }
}
