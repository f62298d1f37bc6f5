using PartsSignal.Analysis.BadBatches;

namespace PartsSignal.Analysis.Tests.BadBatches;

/// <summary>
/// Cases of a shop whose families are built for ten years, with components that wear out with age: what fails depends on
/// how old a unit is, and so differs between build months without any bad batch.
/// </summary>
internal sealed record BatchWorld(int Seed)
{
    public const int First = 2018 * 12;

    /// <summary>The family of the bad batch.</summary>
    public const string BadFamily = "F3";

    /// <summary>The component that fails in it.</summary>
    public const string BadComponent = "c2";

    private static readonly double[] Early = [0.30, 0.15, 0.06, 0.10, 0.02, 0.05, 0.02, 0.05];
    private static readonly double[] Late = [0.10, 0.10, 0.06, 0.05, 0.20, 0.05, 0.14, 0.05];

    /// <summary>Months of the log.</summary>
    public int Months { get; init; } = 72;

    /// <summary>Families.</summary>
    public int Families { get; init; } = 12;

    /// <summary>Cases of known cause and build month in a month, all families.</summary>
    public double PerMonth { get; init; } = 55;

    /// <summary>Build months of the bad batch, counted from the log's first; null: there is none.</summary>
    public (int From, int To)? Bad { get; init; }

    /// <summary>Chance that a call about a unit of the batch needs the component, under five years of age.</summary>
    public double BadShare { get; init; } = 0.33;

    /// <summary>All cases up to a month of the log, oldest first.</summary>
    public BatchCall[] Calls(int? months = null)
    {
        var random = new Random(Seed);
        var calls = new List<BatchCall>();
        for (int m = 0; m < Months; m++)
        {
            double expected = PerMonth * (0.8 + 0.4 * random.NextDouble());
            for (int i = 0; i < expected; i++)
            {
                int family = random.Next(Families);
                int age = (int)(144 * Math.Pow(random.NextDouble(), 1.4));
                bool bad = Bad is { } b && $"F{family}" == BadFamily && m - age >= b.From && m - age <= b.To && age < 60;
                string component = bad && random.NextDouble() < BadShare ? BadComponent : Pick(random, Math.Min(1, age / 120.0));
                calls.Add(new BatchCall(
                    $"J{calls.Count:00000}", $"U{random.Next(40000)}", $"C{random.Next(3000)}", null, "washer", $"F{family}", component, First + m, First + m - age));
            }
        }

        return [.. calls.Where(c => c.Month < First + (months ?? Months))];
    }

    private static string Pick(Random random, double old)
    {
        double u = random.NextDouble();
        for (int k = 0; k < Early.Length; k++)
        {
            u -= Early[k] + old * (Late[k] - Early[k]);
            if (u < 0)
            {
                return $"c{k}";
            }
        }

        return "none";
    }
}
