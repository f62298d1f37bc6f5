using System.Globalization;

namespace PartsSignal.Analysis.Tests.Fixtures;

/// <summary>
/// A shop as shops are: families differ, a third of the calls go elsewhere, three in ten jobs tell no serial, machines are
/// scrapped. A contract customer's register of washers, dryers known from their calls, dishwashers seen again without a
/// register. What is true of it is what reaches this shop, whether the job tells its machine or not.
/// </summary>
internal sealed class RoughWorld
{
    public const int Families = 12;

    /// <summary>Share of failures that come to this shop.</summary>
    public const double Reaching = 2 / 3.0;

    private const int UnitsPerFamily = 45;
    private const int SeenPerFamily = 100;
    private const double MovesPerYear = 0.08;
    private static readonly DateOnly First = new(2019, 1, 1);
    private static readonly int[] DryerCalls = [6, 9, 12, 15, 20, 25, 35, 50, 70, 90, 120, 160];
    private static readonly string[] Needs = ["drive_belt", "heater", "thermal_fuse", "none"];
    private static readonly double[] NeedWeights = [3, 2, 0.6, 6];
    private static readonly int[] BandStarts = [0, 730, 1461, 2191, 2922, 3652, 4748];
    private static readonly string[] Bands = ["0-2", "2-4", "4-6", "6-8", "8-10", "10-13", "13+"];
    private static readonly (string Component, double PerYear)[] Returns = [("spray_arm", 0.06), ("drain_pump", 0.12), ("heater", 0.2)];

    private readonly Random _random;
    private readonly bool _evenSpread;

    /// <param name="seed">Which world.</param>
    /// <param name="evenSpread">True: families differ evenly between 0.4 and 1.6 times; false: as a gamma distribution of shape 6.</param>
    public RoughWorld(int seed, bool evenSpread)
    {
        (_random, _evenSpread) = (new Random(seed), evenSpread);
        Shop.Jobs.Add(new JobRow("first", First) { ApplianceType = "range" });
        for (int f = 0; f < Families; f++)
        {
            string family = $"F{f:00}";
            foreach (string component in Components)
            {
                Multiplier[(family, component)] = Differs();
            }

            Register(family);
            Dryers(family, DryerCalls[f]);
            Seen(family);
        }
    }

    /// <summary>Last day of the log.</summary>
    public static DateOnly Last { get; } = new(2024, 12, 31);

    /// <summary>Components of the washers.</summary>
    public static IReadOnlyList<string> Components { get; } = ["inlet_valve", "drain_pump", "timer"];

    /// <summary>The rows the program gets to see.</summary>
    public SmallShop Shop { get; } = new();

    /// <summary>How much more often a family's component fails than the component does on the whole.</summary>
    public Dictionary<(string Family, string Component), double> Multiplier { get; } = [];

    /// <summary>True share of calls of a dryer family that need a component.</summary>
    public Dictionary<(string Family, string Need), double> Share { get; } = [];

    /// <summary>Calls to be expected that come back to this shop, by family and component of the dishwashers.</summary>
    public Dictionary<(string Family, string Component), double> Expected { get; } = [];

    /// <summary>True failures per unit-year of the washers that reach this shop.</summary>
    public double Rate(string family, string component, string band) => Reaching * Base(component, Array.IndexOf(Bands, band)) * Multiplier[(family, component)];

    /// <summary>The same summed over ages in years.</summary>
    public double Failures(string family, string component, double from, double to) => Enumerable.Range(0, Bands.Length).Sum(b =>
    {
        double start = Math.Max(from, BandStarts[b] / 365.25), end = Math.Min(to, b + 1 < Bands.Length ? BandStarts[b + 1] / 365.25 : 99);
        return Math.Max(0, end - start) * Rate(family, component, Bands[b]);
    });

    private static double Base(string component, int band) =>
        component switch { "inlet_valve" => 0.03 + (0.02 * band), "drain_pump" => 0.08, _ => 0.12 - (0.01 * band) };

    /// <summary>As many washers again that no register lists, of the same customers' kind, failing alike: of the jobs that tell no machine, half are theirs.</summary>
    public void AddUnlisted()
    {
        foreach (JobRow job in Shop.Jobs.Where(j => j.ApplianceType == "washer").ToArray())
        {
            Shop.Jobs.Add(job with { JobId = Next(), UnitId = job.UnitId is null ? null : "unlisted-" + job.UnitId });
        }

        foreach (UnitRow unit in Shop.Units.Where(u => u.Registered).ToArray())
        {
            Shop.Units.Add(unit with { UnitId = "unlisted-" + unit.UnitId, Registered = false });
        }
    }

    private void Register(string family)
    {
        for (int i = 0; i < UnitsPerFamily; i++)
        {
            string id = $"{family}-{i:00}";
            DateOnly built = new DateOnly(2007, 1, 1).AddDays(_random.Next(16 * 365)), installed = built.AddDays(_random.Next(180));
            DateOnly removed = installed.AddDays((int)(365.25 * (8 + (8 * _random.NextDouble()))));
            Shop.Units.Add(new UnitRow(id)
            {
                ModelFamily = family,
                Registered = true,
                MadeFrom = built,
                MadeTo = built,
                InstalledOn = installed,
                RemovedOn = removed <= Last ? removed : null,
            });
            int begin = Math.Max(First.DayNumber, installed.DayNumber) - built.DayNumber, end = Math.Min(removed.DayNumber, Last.DayNumber + 1) - built.DayNumber;
            foreach (string component in Components)
            {
                for (int b = 0; b < Bands.Length; b++)
                {
                    double perDay = Base(component, b) * Multiplier[(family, component)] / 365.25;
                    for (double age = Math.Max(BandStarts[b], begin) + Gap(perDay); age < Math.Min(end, b + 1 < Bands.Length ? BandStarts[b + 1] : int.MaxValue); age += Gap(perDay))
                    {
                        Call(built.AddDays((int)age), id, "washer", family, component);
                    }
                }
            }
        }
    }

    private void Seen(string family)
    {
        double[] rates = [.. Returns.Select(l => l.PerYear * Differs())];
        for (int i = 0; i < SeenPerFamily; i++)
        {
            string id = $"{family}-seen-{i:000}";
            double days = Last.DayNumber - First.DayNumber + 1;
            double present = Math.Min(days, -365.25 * Math.Log(1 - _random.NextDouble()) / MovesPerYear);
            int before = Shop.Jobs.Count;
            for (int c = 0; c < rates.Length; c++)
            {
                for (double day = Gap(rates[c] / 365.25); day < present; day += Gap(rates[c] / 365.25))
                {
                    Call(First.AddDays((int)day), id, "dishwasher", family, Returns[c].Component);
                }
            }

            JobRow[] told = [.. Shop.Jobs.Skip(before).Where(j => j.UnitId is not null)];
            if (told.Length == 0)
            {
                continue;
            }

            DateOnly made = First.AddDays(-_random.Next(3000) - 1);
            Shop.Units.Add(new UnitRow(id) { ApplianceType = "dishwasher", ModelFamily = family, MadeFrom = made, MadeTo = made });
            double after = Math.Max(0, present - (told.Min(j => j.OpenedOn).DayNumber - First.DayNumber) - 1);
            for (int c = 0; c < rates.Length; c++)
            {
                (string, string) cell = (family, Returns[c].Component);
                Expected[cell] = Expected.GetValueOrDefault(cell) + (rates[c] * Reaching / 365.25 * after);
            }
        }
    }

    private void Dryers(string family, int calls)
    {
        double[] draws = [.. NeedWeights.Select(w => w * Differs())];
        for (int k = 0; k < Needs.Length; k++)
        {
            Share[(family, Needs[k])] = draws[k] / draws.Sum();
        }

        for (int i = 0; i < calls; i++)
        {
            double u = _random.NextDouble() * draws.Sum();
            int need = 0;
            while (need < Needs.Length - 1 && u >= draws[need])
            {
                u -= draws[need++];
            }

            DateOnly day = First.AddDays(_random.Next(2190));
            Shop.Jobs.Add(new JobRow(Next(), day) { ClosedOn = day, ApplianceType = "dryer", ModelFamily = family, MainComponent = Needs[need], AgeYears = 16 * _random.NextDouble() });
        }
    }

    private void Call(DateOnly day, string unit, string type, string family, string component)
    {
        if (_random.NextDouble() < Reaching)
        {
            Shop.Jobs.Add(new JobRow(Next(), day)
            {
                ClosedOn = day,
                UnitId = _random.NextDouble() < 0.7 ? unit : null,
                ApplianceType = type,
                ModelFamily = family,
                MainComponent = component,
                ComplaintKind = "other",
            });
        }
    }

    private string Next() => string.Create(CultureInfo.InvariantCulture, $"J{Shop.Jobs.Count:00000}");

    // Whole shapes only: a sum of exponentials.
    private double Differs() => _evenSpread
        ? 0.4 + (1.2 * _random.NextDouble())
        : Enumerable.Range(0, 6).Sum(_ => -Math.Log(1 - _random.NextDouble())) / 6;

    private double Gap(double perDay) => -Math.Log(1 - _random.NextDouble()) / perDay;
}
