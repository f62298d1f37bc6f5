using System.Diagnostics;
using System.Globalization;
using PartsSignal.Pipeline.Understanding.Evidence;
using PartsSignal.Pipeline.Understanding.Model;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Benchmarks.Fitting;

/// <summary>Fits the weights of reading, and says how well they do on files they were not fitted on.</summary>
internal static class FittingProgram
{
    /// <summary>
    /// <c>fit read OUT real|made FOLDER ...</c> gathers the evidence of sets; <c>fit check FOLDS TABLE ...</c> holds out
    /// one group after the other; <c>fit write WEIGHTS TABLE ...</c> fits on all.
    /// </summary>
    public static int Run(string[] args)
    {
        long started = Stopwatch.GetTimestamp();
        switch (args)
        {
            case ["read", var output, var sort, .. var folders]:
                Read(output, sort == "real", folders);
                break;
            case ["check", var folds, .. var tables]:
                Check(int.Parse(folds, CultureInfo.InvariantCulture), Load(tables), started);
                break;
            case ["write", var weights, .. var tables]:
                List<TruthSet> sets = Load(tables);
                File.WriteAllText(weights, new ReadingFit(new FieldLevels(HeaderLexicon.Shipped.Fields)).Fit(Shops(sets)).Text());
                break;
            default:
                Console.Error.WriteLine("fit read|check|write ...");
                return 2;
        }

        return 0;
    }

    /// <summary>The sets as they are learned from.</summary>
    public static IReadOnlyList<LearningShop> Shops(IReadOnlyList<TruthSet> sets)
    {
        var groups = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (TruthSet set in sets)
        {
            groups.TryAdd(set.Origin, groups.Count);
        }

        return [.. sets.Select(s => new LearningShop(s, s.IsReal ? Env("RW", 6.0) / sets.Count(o => o.Origin == s.Origin) : s.Name.StartsWith("dialect", StringComparison.Ordinal) ? Env("DW", 0.15) : Env("GW", 0.3), groups[s.Origin]))];
    }

    private static double Env(string name, double otherwise) => double.TryParse(Environment.GetEnvironmentVariable(name), CultureInfo.InvariantCulture, out double v) ? v : otherwise;

    private static List<TruthSet> Load(string[] tables) => [.. tables.SelectMany(t => TruthSet.ReadLines(File.ReadLines(t)))];

    private static void Read(string output, bool real, string[] folders)
    {
        string[] sets = [.. folders.SelectMany(Directory.GetDirectories).Where(d => File.Exists(Path.Combine(d, "truth.json"))).Order(StringComparer.Ordinal)];
        var samples = new List<IReadOnlyList<TableSample>>();
        using var lines = new StreamWriter(output);
        var read = new List<TruthSet>();
        foreach (string set in sets)
        {
            read.Add(TruthSet.Read(set, real, HeaderLexicon.Shipped, samples));
            Console.Error.WriteLine(read[^1].Name);
            foreach (string line in real ? [] : read[^1].Lines())
            {
                lines.WriteLine(line);
            }
        }

        // Words that only one origin uses must not help it when it is held out.
        for (int i = 0; real && i < read.Count; i++)
        {
            IEnumerable<string> Headers(bool same) => samples.Where((_, j) => read[j].Origin == read[i].Origin == same).SelectMany(s => s).SelectMany(t => t.Columns).Select(c => string.Join(' ', HeaderLexicon.Canonical(c.Name)));
            HashSet<string> own = [.. Headers(same: true)];
            own.ExceptWith(Headers(same: false));
            var lexicon = new HeaderLexicon(WordTable.ReadDefault("field-words.csv"), own);
            foreach (string line in read[i].With(lexicon, samples[i]).Lines())
            {
                lines.WriteLine(line);
            }
        }
    }

    private static void Check(int folds, List<TruthSet> sets, long started)
    {
        var levels = new FieldLevels(HeaderLexicon.Shipped.Fields);
        IReadOnlyList<LearningShop> shops = Shops(sets);
        (Score real, Score made) = (new Score("real"), new Score("generated"));
        for (int fold = 0; fold < folds; fold++)
        {
            ReadingModel model = new ReadingFit(levels).Fit([.. shops.Where(s => s.Group % folds != fold).Select(s => s with { Group = s.Group / folds })]);
            foreach (LearningShop shop in shops.Where(s => s.Group % folds == fold))
            {
                var first = new FirstLook(shop.Set.Evidence, levels, model.First);
                (shop.Set.IsReal ? real : made).Add(shop.Set, new SecondLook(first, first.Kinds(model.FirstKinds)), model, Console.WriteLine);
            }

            Console.Error.WriteLine($"fold {fold}: {Stopwatch.GetElapsedTime(started).TotalSeconds:0} s, {Environment.CpuUsage.TotalTime.TotalSeconds:0} s of processor time");
        }

        Console.WriteLine(real);
        Console.WriteLine(made);
    }
}
