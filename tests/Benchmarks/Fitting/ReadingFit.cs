using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Understanding;

namespace PartsSignal.Benchmarks.Fitting;

/// <summary>A shop that is learned from.</summary>
/// <param name="Set">Its evidence and truth.</param>
/// <param name="Weight">How much a table counts.</param>
/// <param name="Group">Shops of one group are held out together.</param>
internal sealed record LearningShop(TruthSet Set, double Weight, int Group);

/// <summary>One column as one field.</summary>
/// <param name="Field">The field.</param>
/// <param name="Levels">The evidence.</param>
/// <param name="IsRight">Whether the column gives the field.</param>
/// <param name="Weight">How much it counts.</param>
internal sealed record Example(string Field, byte[] Levels, bool IsRight, double Weight);

/// <summary>Fits all weights. What a later step learns from is always the answer of an earlier one that did not see the shop.</summary>
/// <param name="levels">How evidence becomes levels.</param>
internal sealed class ReadingFit(FieldLevels levels)
{
    private const int InnerFolds = 3;
    private const int KindFolds = 5;
    private const int KeptNegatives = 3;
    private static readonly BoostingOptions Common = new(80, 3, 0.15, 3, 0.3);
    private static readonly BoostingOptions Fields = new(40, 3, 0.15, 3, 0.3);
    private static readonly BoostingOptions Kinds = new(60, 3, 0.12, 3, 0.5);
    private static readonly BoostingOptions OwnKinds = new(15, 2, 0.12, 3, 0.5);

    private static readonly BoostingOptions Second = new(30, 2, 0.1, 10, 0.7);

    /// <summary>
    /// The weights: the mean of models that each did not see a part of the shops (Breiman 1996), which know better than one
    /// model fitted on all where they are not certain.
    /// </summary>
    public ReadingModel Fit(IReadOnlyList<LearningShop> shops)
    {
        Dictionary<LearningShop, Example[]> examples = shops.ToDictionary(s => s, s => Examples(s, (t, c, k, f) => levels.Of(s.Set.Evidence.Tables[t], c, k, f), 2));
        var looks = new Dictionary<LearningShop, FirstLook>();
        var fields = new List<FieldModels>();
        for (int fold = 0; fold < InnerFolds; fold++)
        {
            fields.Add(FitFields(shops.Where(s => s.Group % InnerFolds != fold).SelectMany(s => examples[s])));
            foreach (LearningShop shop in shops.Where(s => s.Group % InnerFolds == fold))
            {
                looks.Add(shop, new FirstLook(shop.Set.Evidence, levels, fields[^1]));
            }
        }

        var seconds = new Dictionary<LearningShop, SecondLook>();
        var kinds = new List<KindModels>();
        for (int fold = 0; fold < KindFolds; fold++)
        {
            kinds.Add(FitKinds(shops.Where(s => s.Group % KindFolds != fold), (s, t) => looks[s].KindLevels(t)));
            foreach (LearningShop shop in shops.Where(s => s.Group % KindFolds == fold))
            {
                seconds.Add(shop, new SecondLook(looks[shop], looks[shop].Kinds(kinds[^1])));
            }
        }

        return new ReadingModel(
            new FieldModels(Mean([.. fields.Select(m => m.Common)]), Means([.. fields.Select(m => m.Fields)])),
            Mean(kinds),
            FitSecond(shops, seconds),
            Mean([.. Enumerable.Range(0, KindFolds).Select(fold => FitKinds(shops.Where(s => s.Group % KindFolds != fold), (s, t) => seconds[s].KindLevels(t)))]));
    }

    private static KindModels Mean(IReadOnlyList<KindModels> models) => new(Mean([.. models.Select(m => m.Common)]), Means([.. models.Select(m => m.Kinds)]));

    private static Dictionary<string, TreeModel> Means(IReadOnlyList<IReadOnlyDictionary<string, TreeModel>> models) => models
        .SelectMany(m => m.Keys).Distinct().Order(StringComparer.Ordinal)
        .ToDictionary(k => k, k => Mean([.. models.Select(m => m.GetValueOrDefault(k, new TreeModel(0, [])))]), StringComparer.Ordinal);

    // The mean of sums of trees is the sum of all their trees, each with its share of the leaves.
    private static TreeModel Mean(TreeModel[] models)
    {
        int Shared(int leaf) => (int)Math.Round(leaf / (double)models.Length);
        return new TreeModel(
            (int)Math.Round(models.Average(m => m.Bias)),
            [.. models.SelectMany(m => m.Trees).Select(t => t with { Leaves = [.. t.Leaves.Select(Shared)] })]);
    }

    // Of the many pairs that are wrong every third stands for three. A table is also shown as some kinds it is not,
    // so that a day of an order is known not to be the day of a call.
    private static Example[] Examples(LearningShop shop, Func<int, int, string, string, byte[]> of, int wrongKinds)
    {
        var examples = new List<Example>();
        int wrong = 0;
        for (int t = 0; t < shop.Set.Truth.Count; t++)
        {
            TableTruth truth = shop.Set.Truth[t];
            double weight = shop.Weight / shop.Set.Twins(t);
            string[] others = [.. FieldCatalog.Kinds.Where(k => k != truth.Kind && !truth.AlsoRight.Contains(k))];
            IEnumerable<string> kinds = Enumerable.Range(0, wrongKinds).Select(i => others[(t + (i * 3) + truth.Columns.Count) % others.Length]).Distinct().Where(k => k != truth.Kind);
            foreach (string kind in truth.Kind == KindModels.None ? kinds : kinds.Prepend(truth.Kind))
            {
                bool own = kind == truth.Kind;
                foreach (string field in KindFields.Of(kind))
                {
                    for (int c = 0; c < truth.Columns.Count; c++)
                    {
                        bool right = truth.Columns[c].Right.Contains(field);
                        if (shop.Set.Evidence.Tables[t].Columns[c].IsFilled && (right || ++wrong % KeptNegatives == 0))
                        {
                            examples.Add(new Example(field, of(t, c, kind, field), right, (right ? weight : weight * KeptNegatives) * (own ? 1 : 0.4)));
                        }
                    }
                }
            }
        }

        return [.. examples];
    }

    private static KindModels FitKinds(IEnumerable<LearningShop> shops, Func<LearningShop, int, IReadOnlyList<byte[]>> of)
    {
        var all = new List<Example>();
        foreach (LearningShop shop in shops)
        {
            for (int t = 0; t < shop.Set.Truth.Count; t++)
            {
                TableTruth truth = shop.Set.Truth[t];
                if (truth.Columns.Count > 0)
                {
                    IReadOnlyList<byte[]> rows = of(shop, t);
                    all.AddRange(KindModels.Names.Select((k, i) => new Example(k, rows[i], k == truth.Kind, shop.Weight / shop.Set.Twins(t))).Where(e => !truth.AlsoRight.Contains(e.Field)));
                }
            }
        }

        (TreeModel common, Dictionary<string, TreeModel> own) = FitBoth(all, Kinds, OwnKinds);
        return new KindModels(common, own);
    }

    // Starts from what the first look said, which did not see the shop.
    private static TreeModel FitSecond(IReadOnlyList<LearningShop> shops, Dictionary<LearningShop, SecondLook> seconds)
    {
        var all = new List<Example>();
        var start = new List<int>();
        foreach (LearningShop shop in shops)
        {
            Example[] own = Examples(shop, (t, c, k, f) =>
            {
                FieldChoice first = seconds[shop].First.Choice(t, k);
                byte[] levels = seconds[shop].Of(t, c, k, f);
                return [.. levels, (byte)Math.Clamp(Math.Round(128 + (first.Odds[c, ((IList<string>)first.Fields).IndexOf(f)] * 12)), 0, 255)];
            }, 0);
            all.AddRange(own.Select(e => e with { Levels = e.Levels[..^1] }));
            start.AddRange(own.Select(e => (e.Levels[^1] - 128) * 1000 / 12));
        }

        return Boosting.Fit([.. all.Select(e => e.Levels)], [.. all.Select(e => e.IsRight)], [.. all.Select(e => e.Weight)], [.. start], Second);
    }

    private static FieldModels FitFields(IEnumerable<Example> examples)
    {
        // A field that no set has yet says nothing of any column; it goes by what holds for all.
        Example[] all = [.. examples];
        HashSet<string> known = [.. all.Where(e => e.IsRight).Select(e => e.Field)];
        (TreeModel common, Dictionary<string, TreeModel> own) = FitBoth([.. all.Where(e => known.Contains(e.Field))], Common, Fields);
        return new FieldModels(common, own);
    }

    private static (TreeModel Common, Dictionary<string, TreeModel> Own) FitBoth(IReadOnlyList<Example> all, BoostingOptions shared, BoostingOptions added)
    {
        TreeModel common = Fit(all, null, shared);
        var own = new Dictionary<string, TreeModel>(StringComparer.Ordinal);
        foreach (IGrouping<string, Example> group in all.GroupBy(e => e.Field))
        {
            own.Add(group.Key, Fit([.. group], common, added));
        }

        return (common, own);
    }

    private static TreeModel Fit(IReadOnlyList<Example> rows, TreeModel? start, BoostingOptions options) => Boosting.Fit(
        [.. rows.Select(e => e.Levels)], [.. rows.Select(e => e.IsRight)], [.. rows.Select(e => e.Weight)], start is null ? null : [.. rows.Select(e => start.Score(e.Levels))], options);
}
