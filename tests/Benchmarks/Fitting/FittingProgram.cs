using System.Globalization;
using PartsSignal.Pipeline.Understanding.Evidence;
using PartsSignal.Pipeline.Understanding.Model;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Benchmarks.Fitting;

/// <summary>Fits the weights of reading, and says how well they do on files they were not fitted on.</summary>
internal static class FittingProgram
{
    /// <summary>
    /// <c>fit FOLDS FOLDER ...</c>: folders of sets with their truth, those of real files marked with a plus in front.
    /// </summary>
    public static int Run(string[] args)
    {
        int folds = int.Parse(args[0], CultureInfo.InvariantCulture);
        long started = System.Diagnostics.Stopwatch.GetTimestamp();
        string Time() => FormattableString.Invariant($"{System.Diagnostics.Stopwatch.GetElapsedTime(started).TotalSeconds:0} s");
        List<TruthSet> sets = [.. args[1..].SelectMany(folder => TruthSet.Read(folder.TrimStart('+'), real: folder.StartsWith('+')))];
        Console.Error.WriteLine($"read: {Time()}");
        Dictionary<string, int> groups = Groups(sets);
        LearningShop[] shops = new LearningShop[sets.Count];
        Parallel.For(0, sets.Count, new ParallelOptions { MaxDegreeOfParallelism = 2 }, i =>
            shops[i] = new LearningShop(sets[i], new FieldEvidence([.. sets[i].Tables.Select(t => t.Sample)], HeaderLexicon.Shipped), Weight(sets, sets[i]), groups[sets[i].Origin]));
        Console.Error.WriteLine($"{sets.Count} sets, evidence: {Time()}");
        (Score real, Score invented) = (new Score("real"), new Score("generated"));
        for (int fold = 0; fold < folds; fold++)
        {
            ReadingModel model = ReadingFit.Fit([.. shops.Where(s => s.Group % folds != fold).Select(s => s with { Group = s.Group / folds })]);
            foreach (LearningShop shop in shops.Where(s => s.Group % folds == fold))
            {
                FieldEvidence unseen = shop.Set.IsReal ? shop.Evidence.With(Without(sets, shop.Set.Origin)) : shop.Evidence;
                var first = new FirstLook(shop.Tables, unseen, model.First);
                var second = new SecondLook(first, shop.Tables.ToDictionary(t => t, t => model.FirstKinds.Chances(first.KindLevels(t))));
                (shop.Set.IsReal ? real : invented).Add(shop.Set, second, model, Console.WriteLine);
            }

            Console.Error.WriteLine($"fold {fold}: {Time()}");
        }

        Console.WriteLine(real);
        Console.WriteLine(invented);
        return 0;
    }

    private static double Weight(List<TruthSet> sets, TruthSet set) => set.IsReal ? 3.0 / sets.Count(s => s.Origin == set.Origin) : 0.5;

    private static Dictionary<string, int> Groups(List<TruthSet> sets)
    {
        var groups = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (TruthSet set in sets)
        {
            groups.TryAdd(set.Origin, groups.Count);
        }

        return groups;
    }

    // The shipped words without those phrases that only the origin uses as a header.
    private static HeaderLexicon Without(List<TruthSet> sets, string origin)
    {
        IEnumerable<string> Headers(IEnumerable<TruthSet> some) => some.SelectMany(s => s.Tables).SelectMany(t => t.Sample.Columns).Select(c => string.Join(' ', HeaderLexicon.Canonical(c.Name)));
        HashSet<string> own = [.. Headers(sets.Where(s => s.Origin == origin && s.IsReal))];
        own.ExceptWith(Headers(sets.Where(s => s.Origin != origin)));
        return own.Count == 0 ? HeaderLexicon.Shipped : new HeaderLexicon(WordTable.ReadDefault("field-words.csv"), own);
    }
}
