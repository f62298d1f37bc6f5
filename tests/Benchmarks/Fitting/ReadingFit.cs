using PartsSignal.Pipeline.Understanding.Evidence;
using PartsSignal.Pipeline.Understanding.Model;

namespace PartsSignal.Benchmarks.Fitting;

/// <summary>A shop that is learned from.</summary>
/// <param name="Set">Its tables and their truth.</param>
/// <param name="Evidence">Their evidence.</param>
/// <param name="Weight">How much a table counts.</param>
/// <param name="Group">Shops of one group are held out together.</param>
internal sealed record LearningShop(TruthSet Set, FieldEvidence Evidence, double Weight, int Group)
{
    private readonly Lazy<IReadOnlyList<Example>> _examples = new(() => Example.Of(Set, Weight, Evidence.Of));

    /// <summary>Its tables.</summary>
    public IEnumerable<TableSample> Tables => Set.Tables.Select(t => t.Sample);

    /// <summary>The columns by themselves.</summary>
    public IReadOnlyList<Example> Examples => _examples.Value;
}

/// <summary>Fits all weights. What a later step learns from is always the answer of an earlier one that did not see the shop.</summary>
internal static class ReadingFit
{
    private const int InnerFolds = 3;
    private static readonly BoostingOptions Common = new(80, 3);
    private static readonly BoostingOptions Fields = new(40, 3);
    private static readonly BoostingOptions Kinds = new(60, 3, 0.12, 3, 0.4);

    /// <summary>The weights.</summary>
    public static ReadingModel Fit(IReadOnlyList<LearningShop> shops)
    {
        var looks = new Dictionary<LearningShop, FirstLook>();
        for (int fold = 0; fold < InnerFolds; fold++)
        {
            FieldModels models = FitFields(shops.Where(s => s.Group % InnerFolds != fold).SelectMany(s => s.Examples));
            foreach (LearningShop shop in shops.Where(s => s.Group % InnerFolds == fold))
            {
                looks.Add(shop, new FirstLook(shop.Tables, shop.Evidence, models));
            }
        }

        var seconds = new Dictionary<LearningShop, SecondLook>();
        for (int fold = 0; fold < InnerFolds; fold++)
        {
            KindModels kinds = FitKinds(shops.Where(s => s.Group % InnerFolds != fold), (s, t) => looks[s].KindLevels(t));
            foreach (LearningShop shop in shops.Where(s => s.Group % InnerFolds == fold))
            {
                seconds.Add(shop, new SecondLook(looks[shop], shop.Tables.ToDictionary(t => t, t => kinds.Chances(looks[shop].KindLevels(t)))));
            }
        }

        return new ReadingModel(
            FitFields(shops.SelectMany(s => s.Examples)),
            FitKinds(shops, (s, t) => looks[s].KindLevels(t)),
            FitFields(shops.SelectMany(s => Example.Of(s.Set, s.Weight, seconds[s].Of))),
            FitKinds(shops, (s, t) => seconds[s].KindLevels(t)));
    }

    private static FieldModels FitFields(IEnumerable<Example> examples)
    {
        Example[] all = [.. examples];
        TreeModel common = Boosting.Fit([.. all.Select(e => e.Levels)], [.. all.Select(e => e.IsRight)], [.. all.Select(e => e.Weight)], null, Common);
        var fields = new Dictionary<string, TreeModel>(StringComparer.Ordinal);
        Parallel.ForEach(all.GroupBy(e => e.Field), new ParallelOptions { MaxDegreeOfParallelism = 2 }, group =>
        {
            Example[] own = [.. group];
            TreeModel model = Boosting.Fit([.. own.Select(e => e.Levels)], [.. own.Select(e => e.IsRight)], [.. own.Select(e => e.Weight)], [.. own.Select(e => common.Score(e.Levels))], Fields);
            lock (fields)
            {
                fields.Add(group.Key, model);
            }
        });
        return new FieldModels(common, fields);
    }

    private static KindModels FitKinds(IEnumerable<LearningShop> shops, Func<LearningShop, TableSample, byte[]> levels)
    {
        (TruthTable Table, byte[] Levels, double Weight)[] all = [.. shops.SelectMany(s => s.Set.Tables.Where(t => t.Sample.Columns.Count > 0).Select(t => (t, levels(s, t.Sample), s.Weight / Example.Twins(s.Set, t))))];
        var kinds = new Dictionary<string, TreeModel>(StringComparer.Ordinal);
        Parallel.ForEach(KindModels.Names, new ParallelOptions { MaxDegreeOfParallelism = 2 }, kind =>
        {
            var own = all.Where(t => !t.Table.AlsoRight.Contains(kind)).ToArray();
            TreeModel model = Boosting.Fit([.. own.Select(t => t.Levels)], [.. own.Select(t => t.Table.Kind == kind)], [.. own.Select(t => t.Weight)], null, Kinds);
            lock (kinds)
            {
                kinds.Add(kind, model);
            }
        });
        return new KindModels(kinds);
    }
}
