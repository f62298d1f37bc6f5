using System.Diagnostics;
using System.Globalization;
using System.IO.Compression;
using PartsSignal.Pipeline.Understanding;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Benchmarks.Fitting;

/// <summary>Fits the weights of reading, and says how well they do on files they were not fitted on.</summary>
internal static class FittingProgram
{
    /// <summary>
    /// <c>fit read OUT real|outside|made|dialect|sample FOLDER ...</c> gathers the evidence of sets; <c>fit pack OUT TABLE ...</c>
    /// puts tables together without the names of sets and files; <c>fit check FOLDS TABLE ...</c> holds out one group after
    /// the other; <c>fit predict FOLDS OUT TABLE ...</c> writes what is said of each table held out, to choose thresholds by;
    /// <c>fit write WEIGHTS TABLE ...</c> fits on all.
    /// </summary>
    public static int Run(string[] args)
    {
        long started = Stopwatch.GetTimestamp();
        switch (args)
        {
            case ["read", var output, var sort, .. var folders]:
                Read(output, sort, folders);
                break;
            case ["pack", var output, .. var tables]:
                Pack(output, Load(tables));
                break;
            case ["check", var folds, .. var tables]:
                Check(int.Parse(folds, CultureInfo.InvariantCulture), Load(tables), started);
                break;
            case ["predict", var folds, var output, .. var tables]:
                Predict(int.Parse(folds, CultureInfo.InvariantCulture), output, Load(tables), started);
                break;
            case ["write", var weights, .. var tables]:
                File.WriteAllText(weights, Weights(Load(tables)));
                break;
            default:
                Console.Error.WriteLine("fit read|pack|check|predict|write ...");
                return 2;
        }

        return 0;
    }

    /// <summary>The weights as text, fitted on all sets.</summary>
    public static string Weights(IReadOnlyList<TruthSet> sets) => new ReadingFit(new FieldLevels(HeaderLexicon.Shipped.Fields)).Fit(Shops(sets)).Text();

    /// <summary>Reads evidence, packed or not.</summary>
    public static IReadOnlyList<TruthSet> Load(string[] tables) => TruthSet.ReadLines(tables.SelectMany(LinesOf));

    private static IEnumerable<string> LinesOf(string path)
    {
        using var reader = new StreamReader(path.EndsWith(".gz", StringComparison.Ordinal) ? new GZipStream(File.OpenRead(path), CompressionMode.Decompress) : File.OpenRead(path));
        while (reader.ReadLine() is { } line)
        {
            yield return line;
        }
    }

    private static IReadOnlyList<LearningShop> Shops(IReadOnlyList<TruthSet> sets)
    {
        var groups = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (TruthSet set in sets)
        {
            groups.TryAdd(set.Origin, groups.Count);
        }

        return [.. sets.Select(s => new LearningShop(s, WeightOf(s, sets), groups[s.Origin]))];
    }

    // What was seen of real shops counts most, then what other people invented; our own invented shops share one world.
    private static double WeightOf(TruthSet set, IReadOnlyList<TruthSet> sets) => set.Sort switch
    {
        "real" => 3.0 / sets.Count(s => s.Origin == set.Origin),
        "sample" => 8,
        "outside" => 1.5,
        "made" => 0.5,
        _ => 0.15,
    };

    private static void Pack(string output, IReadOnlyList<TruthSet> sets)
    {
        string[] origins = [.. sets.Select(s => s.Origin).Distinct()];
        using var writer = new StreamWriter(new GZipStream(File.Create(output), CompressionLevel.SmallestSize)) { NewLine = "\n" };
        for (int i = 0; i < sets.Count; i++)
        {
            foreach (string line in Named(sets, i).Lines($"s{i}", $"o{Array.IndexOf(origins, sets[i].Origin)}"))
            {
                writer.WriteLine(line);
            }
        }
    }

    // Invented shops name their files too well: half of them go without names, and of a quarter the names are exchanged.
    private static TruthSet Named(IReadOnlyList<TruthSet> sets, int at)
    {
        TruthSet set = sets[at];
        IReadOnlyList<TableEvidence> tables = set.Evidence.Tables;
        return set.IsReal || at % 4 == 0 ? set : set with
        {
            Evidence = new ShopEvidence([.. tables.Select((t, i) => t with { NameLevels = at % 4 == 1 ? tables[(i + 1) % tables.Count].NameLevels : new byte[t.NameLevels.Length] })]),
        };
    }

    private static void Read(string output, string sort, string[] folders)
    {
        string[] sets = [.. folders.SelectMany(Directory.GetDirectories).Where(d => File.Exists(Path.Combine(d, "truth.json"))).Order(StringComparer.Ordinal)];
        var samples = new List<IReadOnlyList<TableSample>>();
        TruthSet[] read = [.. sets.Select(s => TruthSet.Read(s, sort, HeaderLexicon.Shipped, samples))];
        using var lines = new StreamWriter(output);
        for (int i = 0; i < read.Length; i++)
        {
            TruthSet set = sort == "real" ? read[i].With(Without(read, samples, i), samples[i]) : read[i];
            foreach (string line in set.Lines(set.Name, set.Origin))
            {
                lines.WriteLine(line);
            }
        }
    }

    // The shipped words without those phrases that only the origin uses: they must not help it when it is held out.
    private static HeaderLexicon Without(TruthSet[] read, List<IReadOnlyList<TableSample>> samples, int at)
    {
        IEnumerable<string> Headers(bool same) => samples.Where((_, j) => read[j].Origin == read[at].Origin == same).SelectMany(s => s).SelectMany(t => t.Columns).Select(c => string.Join(' ', HeaderLexicon.Canonical(c.Name)));
        HashSet<string> own = [.. Headers(same: true)];
        own.ExceptWith(Headers(same: false));
        return new HeaderLexicon(WordTable.ReadDefault("field-words.csv"), own);
    }

    private static void Check(int folds, IReadOnlyList<TruthSet> sets, long started)
    {
        var scores = new SortedDictionary<string, Score>(StringComparer.Ordinal);
        HoldOut(folds, sets, started, (set, second, model) =>
        {
            if (!scores.TryGetValue(set.Sort, out Score? score))
            {
                scores.Add(set.Sort, score = new Score(set.Sort));
            }

            score.Add(set, second, model, Console.WriteLine);
        });
        foreach (Score score in scores.Values)
        {
            Console.WriteLine(score);
        }
    }

    private static void Predict(int folds, string output, IReadOnlyList<TruthSet> sets, long started)
    {
        using var writer = new StreamWriter(output) { NewLine = "\n" };
        HoldOut(folds, sets, started, (set, second, model) =>
        {
            for (int t = 0; t < set.Truth.Count; t++)
            {
                writer.WriteLine(HeldOutTable.Of(set, t, second, model).ToJson());
            }
        });
    }

    // Each shop is read with weights that saw none of its origin's.
    private static void HoldOut(int folds, IReadOnlyList<TruthSet> sets, long started, Action<TruthSet, SecondLook, ReadingModel> look)
    {
        var levels = new FieldLevels(HeaderLexicon.Shipped.Fields);
        IReadOnlyList<LearningShop> shops = Shops(sets);
        for (int fold = 0; fold < folds; fold++)
        {
            ReadingModel model = new ReadingFit(levels).Fit([.. shops.Where(s => s.Group % folds != fold).Select(s => s with { Group = s.Group / folds })]);
            foreach (LearningShop shop in shops.Where(s => s.Group % folds == fold))
            {
                var first = new FirstLook(shop.Set.Evidence, levels, model.First);
                look(shop.Set, new SecondLook(first, first.Kinds(model.FirstKinds)), model);
            }

            Console.Error.WriteLine($"fold {fold}: {Stopwatch.GetElapsedTime(started).TotalSeconds:0} s, {Environment.CpuUsage.TotalTime.TotalSeconds:0} s of processor time");
        }
    }
}
