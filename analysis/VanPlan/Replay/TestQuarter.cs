using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.VanPlan.Replay;

/// <summary>The jobs of one van in one quarter, by the numbers current at the end of the data, and the parts any load can hold.</summary>
/// <param name="Parts">Parts, by number; prices and lead times as known before the quarter.</param>
/// <param name="Index">Index by number.</param>
/// <param name="Stream">Jobs whose needs are told, in the order they came.</param>
/// <param name="FirstDay">First day of the quarter.</param>
/// <param name="NotRepaired">Jobs left out: declined or not worth it.</param>
/// <param name="NotTold">Jobs left out: parts not recorded or not resolved, or still open.</param>
internal sealed record TestQuarter(
    IReadOnlyList<StockPart> Parts, IReadOnlyDictionary<string, int> Index, JobStream Stream, DateOnly FirstDay, int NotRepaired, int NotTold)
{
    /// <summary>Restocking of these parts.</summary>
    public RestockRule Restock(VanPlanOptions options) => new(options.ReviewDays, [.. Parts.Select(p => p.LeadDays)]);

    /// <summary>Collects a van's jobs.</summary>
    /// <param name="data">The shop.</param>
    /// <param name="facts">Prices and lead times.</param>
    /// <param name="van">The van.</param>
    /// <param name="from">First day.</param>
    /// <param name="to">Day after the last.</param>
    /// <param name="options">How.</param>
    /// <param name="others">Numbers the loads hold beside those the jobs need.</param>
    public static TestQuarter Create(
        ShopData data, StockPartFacts facts, string van, DateOnly from, DateOnly to, VanPlanOptions options, IEnumerable<string> others)
    {
        DateOnly end = data.AsOf.AddDays(1);
        ShopJob[] all = [.. data.Jobs.Where(j => j.Van == van && j.OpenedOn >= from && j.OpenedOn < to)];
        ShopJob[] told = [.. all.Where(j => JobNeeds.Told(j, end) == NeedsKnown.Yes)];
        int notRepaired = all.Count(j => JobNeeds.Told(j, end) == NeedsKnown.NotRepaired);
        string[] numbers = [.. told.SelectMany(JobNeeds.Today).Select(n => n.Number).Concat(others).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        var index = numbers.Select((n, i) => (n, i)).ToDictionary(x => x.n, x => x.i, StringComparer.Ordinal);
        JobStream stream = JobStream.From(told.Select(j => (
            j.OpenedOn.DayNumber - from.DayNumber, 1.0, (IReadOnlyList<PartNeed>)ShopViews.Needs(JobNeeds.Today(j), index))));
        return new TestQuarter(
            [.. numbers.Select(n => facts.On(n, from, options.LeadDays))], index, stream, from, notRepaired, all.Length - told.Length - notRepaired);
    }

    /// <summary>A load of a view in these parts; pieces of an old and a new number serve the same jobs.</summary>
    public int[] Translate(IReadOnlyList<int> load, ShopView view, IReadOnlyDictionary<string, string> today)
    {
        int[] translated = new int[Parts.Count];
        for (int p = 0; p < load.Count; p++)
        {
            if (load[p] > 0)
            {
                string number = view.Parts[p].Number;
                translated[Index[today.GetValueOrDefault(number, number)]] += load[p];
            }
        }

        return translated;
    }

    /// <summary>The best load for these very jobs within the limits.</summary>
    public VanLoad Hindsight(VanPlanOptions options, LoadLimits limits)
    {
        LoadPart[] parts = [.. Parts.Select(p => new LoadPart(
            p.Number, p.PriceCents, p.Space, p.SizeClass is { } size && options.OffVanSizes.Contains(size) ? 0 : options.MostPieces))];
        return VanLoadPlanner.Plan(LoadProblemBuilder.Build(parts, RequiredLevels.From(Stream, Restock(options)), limits), LoadEffort.Quick);
    }
}
