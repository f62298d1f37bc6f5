using PartsSignal.SampleShop.Chance;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Simulation;

/// <summary>The appliances of an area and the days on which something happens to them.</summary>
internal sealed class Fleet(Population population, Dice dice)
{
    private readonly List<Unit>?[] _happens = new List<Unit>?[ShopCalendar.AsOf + 1];

    /// <summary>Every unit of the contract customer, gone or not.</summary>
    public List<Unit> Register { get; } = [];

    /// <summary>Everybody gets the machines they will buy.</summary>
    public void Settle()
    {
        foreach (Unit unit in population.Households())
        {
            Await(unit, unit.InstalledDay);
        }

        foreach (Customer house in population.Houses)
        {
            foreach (string type in Population.HouseFleet(dice))
            {
                Install(house, type, ShopCalendar.Day(2012, 1, 1) + dice.Below(2200));
            }
        }
    }

    /// <summary>Looks at a unit again on the first day something happens to it, but not before a day.</summary>
    public void Await(Unit unit, int notBefore)
    {
        int day = Math.Max(unit.NextDay(), notBefore);
        if (day <= ShopCalendar.AsOf && unit.AwaitedOn != day)
        {
            unit.AwaitedOn = day;
            (_happens[day] ??= []).Add(unit);
        }
    }

    /// <summary>Passes on every failure of a day: unit, cause, day. A guest house replaces what is gone.</summary>
    public void LiveThrough(int day, Action<Unit, int, int> fail)
    {
        foreach (Unit unit in _happens[day] ?? [])
        {
            if (unit.AwaitedOn != day)
            {
                continue;
            }

            unit.AwaitedOn = -1;
            if (unit.IsGone(day))
            {
                if (unit.Owner.IsContract)
                {
                    unit.EndDay = day;
                    Install(unit.Owner, unit.Family.Type, day);
                }

                continue;
            }

            for (int k = 0; k < unit.FailsOn.Length && !unit.IsGone(day); k++)
            {
                if (unit.FailsOn[k] <= day)
                {
                    fail(unit, k, day);
                }
            }

            Await(unit, day + 1);
        }

        _happens[day] = null;
    }

    /// <summary>A cause begins a new life: a new part, or the tap opened again.</summary>
    public void Renew(Unit unit, int cause, int day, bool secondSupplier)
    {
        FamilyCause renewed = unit.Family.Causes[cause];
        int from = Math.Min(ShopCalendar.AsOf, day);
        double life = Faults.DrawLife(unit.Family, renewed, unit.BuildMonth, false, secondSupplier, dice);
        unit.FailsOn[cause] = Math.Max(from + 1, renewed.Cause.Season.DayAfter(from, life, unit.Pace));
    }

    private void Install(Customer house, string type, int day)
    {
        Unit unit = population.ForHouse(house, type, day, dice);
        if (unit.InstalledDay <= ShopCalendar.AsOf)
        {
            Register.Add(unit);
            Await(unit, unit.InstalledDay);
        }
    }
}
