using PartsSignal.SampleShop.Scoring;
using PartsSignal.SampleShop.Simulation;

[assembly: AssemblyFixture(typeof(PartsSignal.SampleShop.Tests.Simulation.LivedArea))]

namespace PartsSignal.SampleShop.Tests.Simulation;

/// <summary>One area lived through once, with everything that was heard of it.</summary>
public sealed class LivedArea
{
    public LivedArea()
    {
        Log = Live(5, 5, 1);
        BestOdds = new(() => [.. Log.Jobs.Where((_, i) => i % 10 == 0).Select(Asked)]);
    }

    internal Heard Log { get; }

    /// <summary>A tenth of the jobs with their best odds, which take seconds to work out.</summary>
    internal Lazy<IReadOnlyList<(Job Job, Odds True, Odds Recorded)>> BestOdds { get; }

    private static (Job Job, Odds True, Odds Recorded) Asked(Job job)
    {
        (Odds truth, Odds recorded) = PartsSignal.SampleShop.Scoring.BestOdds.For(job);
        return (job, truth, recorded);
    }

    internal static Heard Live(long seed, long eventSeed, double size)
    {
        var heard = new Heard();
        new Area(seed, eventSeed, 0, size, new Numbering(), heard).Run();
        return heard;
    }

    internal sealed class Heard : IShopLog
    {
        public List<Job> Jobs { get; } = [];

        public List<OrderLine> Orders { get; } = [];

        public List<Unit> Register { get; } = [];

        public int DaysHeard { get; private set; }

        public void Opened(Job job)
        {
        }

        public void DayDone(int day) => DaysHeard++;

        public void Final(Job job) => Jobs.Add(job);

        public void Ordered(OrderLine line) => Orders.Add(line);

        public void Closing(Area area) => Register.AddRange(area.Register);
    }
}
