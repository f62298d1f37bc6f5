namespace PartsSignal.Analysis.Tests.Fixtures;

/// <summary>
/// A small shop simulated with known truth: a register of washers whose components fail by age and family, and dryers
/// known only from their calls, whose needs are drawn from shares per family.
/// </summary>
internal sealed class ShopWorld
{
    public const int Families = 12;
    private const int UnitsPerFamily = 60;
    private const int CallsPerFamily = 80;
    private const double FamilyShape = 6;
    private static readonly DateOnly First = new(2019, 1, 1);
    private static readonly string[] Needs = ["drive_belt", "heater", "thermal_fuse", "none"];
    private static readonly double[] NeedWeights = [3, 2, 4, 6];

    private readonly Random _random;

    public ShopWorld(int seed)
    {
        _random = new Random(seed);
        Shop.Jobs.Add(new JobRow("first", First) { ApplianceType = "range" });
        for (int f = 0; f < Families; f++)
        {
            string family = $"F{f:00}";
            foreach (string component in Components)
            {
                Multiplier[(family, component)] = Gamma(FamilyShape) / FamilyShape;
            }

            Register(family);
            Dryers(family);
        }
    }

    /// <summary>Last day of the log.</summary>
    public static DateOnly Last { get; } = new(2023, 12, 31);

    /// <summary>Components of the washers.</summary>
    public static IReadOnlyList<string> Components { get; } = ["inlet_valve", "drain_pump", "timer"];

    /// <summary>The rows the program gets to see.</summary>
    public SmallShop Shop { get; } = new();

    /// <summary>How much more often a family's component fails than the component does on the whole.</summary>
    public Dictionary<(string Family, string Component), double> Multiplier { get; } = [];

    /// <summary>True share of calls of a dryer family that need a component.</summary>
    public Dictionary<(string Family, string Need), double> Share { get; } = [];

    /// <summary>True failures per unit-year of a component in an age band, before the family's multiplier.</summary>
    public static double Base(string component, string band)
    {
        int place = Array.IndexOf(Bands, band);
        return component switch { "inlet_valve" => 0.02 + (0.015 * place), "drain_pump" => 0.05, _ => 0.09 - (0.01 * place) };
    }

    /// <summary>True failures per unit-year.</summary>
    public double Rate(string family, string component, string band) => Base(component, band) * Multiplier[(family, component)];

    private static readonly string[] Bands = ["0-2", "2-4", "4-6", "6-8", "8-10", "10-13", "13+"];
    private static readonly int[] BandStarts = [0, 730, 1461, 2191, 2922, 3652, 4748];

    private void Register(string family)
    {
        for (int i = 0; i < UnitsPerFamily; i++)
        {
            string id = $"{family}-{i:00}";
            DateOnly built = new DateOnly(2006, 1, 1).AddDays(_random.Next(15 * 365));
            DateOnly? removed = _random.NextDouble() < 0.2 ? First.AddDays(100 + _random.Next(1700)) : null;
            Shop.Units.Add(new UnitRow(id)
            {
                ModelFamily = family,
                Registered = true,
                MadeFrom = built,
                MadeTo = built,
                InstalledOn = built,
                RemovedOn = removed,
            });
            for (int b = 0; b < Bands.Length; b++)
            {
                int after = Math.Max(BandStarts[b], First.DayNumber - built.DayNumber);
                int before = Math.Min(b + 1 < Bands.Length ? BandStarts[b + 1] : int.MaxValue, ((removed ?? Last.AddDays(1)).DayNumber) - built.DayNumber);
                foreach (string component in Components)
                {
                    Fail(id, family, component, built, after, before, Rate(family, component, Bands[b]) / 365.25);
                }
            }
        }
    }

    // Failures come at exponential gaps while the unit is in one age band.
    private void Fail(string unit, string family, string component, DateOnly built, int after, int before, double perDay)
    {
        for (double age = after + Gap(perDay); age < before; age += Gap(perDay))
        {
            DateOnly day = built.AddDays((int)age);
            Shop.Jobs.Add(new JobRow($"W{Shop.Jobs.Count:00000}", day)
            {
                ClosedOn = day,
                UnitId = unit,
                ModelFamily = family,
                MainComponent = component,
                ComplaintKind = component == "timer" ? "not_starting" : "no_fill",
            });
        }
    }

    private double Gap(double perDay) => -Math.Log(1 - _random.NextDouble()) / perDay;

    private void Dryers(string family)
    {
        double[] draws = [.. NeedWeights.Select(Gamma)];
        for (int k = 0; k < Needs.Length; k++)
        {
            Share[(family, Needs[k])] = draws[k] / draws.Sum();
        }

        for (int i = 0; i < CallsPerFamily; i++)
        {
            double u = _random.NextDouble() * draws.Sum();
            int need = 0;
            while (need < Needs.Length - 1 && u >= draws[need])
            {
                u -= draws[need++];
            }

            DateOnly day = First.AddDays(_random.Next(1826));
            Shop.Jobs.Add(new JobRow($"D{Shop.Jobs.Count:00000}", day)
            {
                ClosedOn = day,
                ApplianceType = "dryer",
                ModelFamily = family,
                MainComponent = Needs[need],
                ComplaintKind = "no_heat",
                AgeYears = 16 * _random.NextDouble(),
            });
        }
    }

    // Whole shapes only: a sum of exponentials.
    private double Gamma(double shape) => Enumerable.Range(0, (int)shape).Sum(_ => -Math.Log(1 - _random.NextDouble()));
}
