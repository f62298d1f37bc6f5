using PartsSignal.SampleShop.Chance;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Simulation;

/// <summary>Who buys what, when: the appliances sold in one area over the years, and the guest houses' machines.</summary>
internal sealed class Population
{
    private const double UnitsPerHousehold = 2.3;
    private const int GuestHouses = 30;

    private readonly Catalog _world = Catalog.World;
    private readonly Dice _dice;
    private readonly Func<ModelFamily, double> _sold;

    /// <param name="seed">Seed of the shop.</param>
    /// <param name="area">Number of the area, from 0.</param>
    /// <param name="size">1: an area that gives about 20,000 jobs.</param>
    public Population(long seed, int area, double size)
    {
        _dice = Dice.For(seed, "population", area);
        _sold = family => size * UnitsPerPopularity * family.Popularity;
        Maker = new CustomerMaker(area);
        Houses = [.. Enumerable.Range(0, Math.Max(2, (int)Math.Round(GuestHouses * Math.Min(1, size)))).Select(h => Maker.GuestHouse(h, h, _dice))];
    }

    /// <summary>Units a family of popularity 1 sells a month in an area of size 1.</summary>
    public const double UnitsPerPopularity = 1.16;

    public CustomerMaker Maker { get; }

    public IReadOnlyList<Customer> Houses { get; }

    /// <summary>Every household unit that will be sold up to the last day, not in order.</summary>
    public IEnumerable<Unit> Households()
    {
        var homes = new List<Customer>();
        for (int month = 0; month <= ShopCalendar.MonthIndex(ShopCalendar.AsOf); month++)
        {
            foreach (ModelFamily family in _world.Families)
            {
                double expected = _sold(family) * family.SalesIn(month) / family.Popularity;
                int count = (int)expected + (_dice.Chance(expected - (int)expected) ? 1 : 0);
                for (int i = 0; i < count; i++)
                {
                    Customer home;
                    if (homes.Count > 50 && _dice.Chance(1 - (1 / UnitsPerHousehold)))
                    {
                        home = _dice.Pick(homes);
                    }
                    else
                    {
                        home = Maker.Household(Houses.Count + homes.Count, _dice);
                        homes.Add(home);
                    }

                    int built = ShopCalendar.MonthStart(month) + _dice.Below(28);
                    int installed = built + 5 + (int)(_dice.Uniform() * _dice.Uniform() * 240);
                    yield return Make(family, built, installed, home, _dice);
                }
            }
        }
    }

    /// <summary>A machine for a guest house, new on the day.</summary>
    public Unit ForHouse(Customer house, string type, int day, Dice dice)
    {
        int installed = day + dice.Between(2, 20);
        int built = installed - dice.Between(20, 150);
        int month = ShopCalendar.MonthIndex(Math.Max(0, built));
        IReadOnlyList<ModelFamily> families = _world.FamiliesByType[type];
        double[] weights = [.. families.Select(f => f.SalesIn(month) * (f.Index % 2 == house.Number % 2 ? 2 : 1))];
        ModelFamily family = families[dice.Weighted(weights)];
        return Make(family, Math.Max(0, built), installed, house, dice);
    }

    /// <summary>The types one guest house runs, with repeats.</summary>
    public static IReadOnlyList<string> HouseFleet(Dice dice)
    {
        var fleet = new List<string> { "washer", "washer", "dryer", "dishwasher", "refrigerator", "refrigerator", "range", "microwave" };
        for (int i = dice.Below(4); i > 0; i--)
        {
            fleet.Add(dice.Pick(["washer", "dryer", "refrigerator", "microwave"]));
        }

        return fleet;
    }

    private static Unit Make(ModelFamily family, int built, int installed, Customer owner, Dice dice)
    {
        int month = ShopCalendar.MonthIndex(built);
        Model[] made = [.. family.Models.Where(m => month >= m.FirstMonth && month <= m.LastMonth)];
        var unit = new Unit
        {
            Family = family,
            Model = made.Length > 0 ? dice.Pick(made) : family.Models[^1],
            BuiltDay = built,
            InstalledDay = installed,
            Owner = owner,
            Serial = family.Brand.Serial.Write(built, dice),
            FailsOn = new int[family.Causes.Count],
        };
        for (int k = 0; k < family.Causes.Count; k++)
        {
            FamilyCause cause = family.Causes[k];
            double life = Faults.DrawLife(family, cause, month, true, false, dice);
            unit.FailsOn[k] = cause.Cause.Season.DayAfter(Math.Min(installed, ShopCalendar.AsOf), life, unit.Pace);
        }

        unit.EndDay = installed + (int)(365.25 * (owner.IsContract
            ? 9 + (6 * dice.Uniform())
            : Math.Min(dice.Weibull(Wear.RefitShape, Wear.RefitYears), dice.Exponential() / Wear.MovesPerYear)));
        return unit;
    }
}
