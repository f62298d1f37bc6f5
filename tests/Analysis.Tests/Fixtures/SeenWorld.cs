namespace PartsSignal.Analysis.Tests.Fixtures;

/// <summary>
/// A shop without a register. Its customers' dishwashers fail at known rates; a call comes to this shop or to another, and
/// some customers move away without a word. The log holds the calls that came here, and nothing else.
/// </summary>
internal sealed class SeenWorld
{
    public const int Families = 12;

    /// <summary>Share of an appliance's failures that this shop is called for.</summary>
    public const double Loyalty = 0.6;
    private const int UnitsPerFamily = 120;
    private const double MovesPerYear = 0.08;
    private static readonly DateOnly First = new(2019, 1, 1);
    private static readonly (string Component, double PerYear)[] Lives = [("spray_arm", 0.06), ("drain_pump", 0.12), ("heater", 0.2)];

    private readonly Random _random;

    public SeenWorld(int seed)
    {
        _random = new Random(seed);
        Shop.Jobs.Add(new JobRow("first", First) { ApplianceType = "range" });
        for (int f = 0; f < Families; f++)
        {
            string family = $"F{f:00}";
            double[] rates = [.. Lives.Select(l => l.PerYear * Multiplier())];
            for (int i = 0; i < UnitsPerFamily; i++)
            {
                Live($"{family}-{i:000}", family, rates);
            }
        }
    }

    /// <summary>Last day of the log.</summary>
    public static DateOnly Last { get; } = new(2023, 12, 31);

    /// <summary>The rows the program gets to see.</summary>
    public SmallShop Shop { get; } = new();

    /// <summary>Calls to this shop to be expected after the first call of every unit, of customers who have not moved away.</summary>
    public Dictionary<(string Family, string Component), double> Expected { get; } = [];

    /// <summary>True failures per unit-year, whoever is called for them.</summary>
    public Dictionary<(string Family, string Component), double> Failures { get; } = [];

    private void Live(string id, string family, double[] rates)
    {
        double days = Last.DayNumber - First.DayNumber + 1;
        double present = Math.Min(days, -365.25 * Math.Log(1 - _random.NextDouble()) / MovesPerYear);
        var calls = new List<(int Day, string Component)>();
        for (int c = 0; c < rates.Length; c++)
        {
            double perDay = rates[c] * Loyalty / 365.25;
            for (double day = Gap(perDay); day < present; day += Gap(perDay))
            {
                calls.Add(((int)day, Lives[c].Component));
            }
        }

        if (calls.Count == 0)
        {
            return;
        }

        DateOnly made = First.AddDays(-_random.Next(3000) - 1);
        Shop.Units.Add(new UnitRow(id) { ApplianceType = "dishwasher", ModelFamily = family, MadeFrom = made, MadeTo = made });
        foreach ((int day, string component) in calls)
        {
            Shop.Jobs.Add(new JobRow($"J{Shop.Jobs.Count:00000}", First.AddDays(day))
            {
                ClosedOn = First.AddDays(day),
                ApplianceType = "dishwasher",
                UnitId = id,
                ModelFamily = family,
                MainComponent = component,
                ComplaintKind = "other",
            });
        }

        double after = Math.Max(0, present - calls.Min(c => c.Day) - 1);
        for (int c = 0; c < rates.Length; c++)
        {
            (string, string) cell = (family, Lives[c].Component);
            Expected[cell] = Expected.GetValueOrDefault(cell) + (rates[c] * Loyalty / 365.25 * after);
            Failures[cell] = rates[c];
        }
    }

    // Families differ by a gamma factor of shape 6: a sum of exponentials.
    private double Multiplier() => Enumerable.Range(0, 6).Sum(_ => -Math.Log(1 - _random.NextDouble())) / 6;

    private double Gap(double perDay) => -Math.Log(1 - _random.NextDouble()) / perDay;
}
