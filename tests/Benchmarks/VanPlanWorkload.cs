using System.Globalization;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.VanPlan.Loads;
using PartsSignal.Analysis.VanPlan.Replay;

namespace PartsSignal.Benchmarks;

/// <summary>Demand, plan with bound, and first-come replay for six vans and 800 parts; the size is the number of jobs in two years.</summary>
public sealed class VanPlanWorkload : IWorkload
{
    private const int Vans = 6;
    private const int Parts = 800;
    private const int Families = 60;
    private static readonly DateOnly AsOf = new(2026, 1, 1);
    private PastJob[] _jobs = [];
    private LoadPart[] _parts = [];

    /// <inheritdoc/>
    public string Name => "van-plan";

    /// <inheritdoc/>
    public int DefaultSize => 10_000;

    /// <inheritdoc/>
    public string Unit => "jobs";

    /// <inheritdoc/>
    public void Prepare(int size)
    {
        var random = new Random(7);
        _parts = [.. Enumerable.Range(0, Parts).Select(i =>
            new LoadPart(i.ToString("D4", CultureInfo.InvariantCulture), random.Next(300, 15_000), random.Next(4) switch { 0 => 8, 1 => 3, _ => 1 }, 12))];
        _jobs = [.. Enumerable.Range(0, size).Select(_ => Job(random)).OrderBy(j => j.Day)];
    }

    /// <inheritdoc/>
    public string Run()
    {
        var restock = new RestockRule(7, [.. Enumerable.Repeat(4, Parts)]);
        var model = VanDemandModel.Learn(_jobs, AsOf, new DemandSizes(Vans, 6, Families, Parts), new DemandOptions());
        double value = 0;
        double bound = 0;
        double replayed = 0;
        for (int van = 0; van < Vans; van++)
        {
            VanDemand demand = model.Of(van);
            LoadProblem problem = LoadProblemBuilder.Build(_parts, DemandLevels.Year(demand, restock, 1), new LoadLimits(250_000, 300));
            VanLoad plan = VanLoadPlanner.Plan(problem, LoadEffort.Thorough);
            value += plan.Value - plan.AlwaysDone;
            bound += plan.Bound - plan.AlwaysDone;
            replayed += Replay(van, restock, [.. plan.Quantities]);
        }

        return string.Create(CultureInfo.InvariantCulture,
            $"within {(bound - value) / bound:P2} of the best possible; replay of its own history finishes {replayed / _jobs.Length:P1}");
    }

    private double Replay(int van, RestockRule restock, int[] load)
    {
        DateOnly first = _jobs[0].Day;
        JobStream stream = JobStream.From(_jobs.Where(j => j.Van == van).Select(j => (j.Day.DayNumber - first.DayNumber, 1.0, j.Needs)));
        return new FirstComeReplay(stream, restock, ConsumeRule.TakeWhatIsThere).Run(load);
    }

    /// <summary>A few families make half the calls; each van has families of its own; one job in four needs no part, one in five several.</summary>
    private static PastJob Job(Random random)
    {
        int van = random.Next(Vans);
        int family = (int)(Families * random.NextDouble() * random.NextDouble());
        family = random.Next(4) == 0 ? (family + (van * 7)) % Families : family;
        int count = random.NextDouble() switch { < 0.25 => 0, < 0.80 => 1, < 0.95 => 2, _ => 3 };
        PartNeed[] needs = [.. Enumerable.Range(0, count)
            .Select(_ => (family * 13) + (int)(20 * random.NextDouble() * random.NextDouble()))
            .Select(p => p % Parts).Distinct().Select(p => new PartNeed(p, random.Next(12) == 0 ? 2 : 1))];
        return new PastJob(van, AsOf.AddDays(-1 - random.Next(730)), family % 6, family, needs);
    }
}
