using System.Globalization;
using System.Text.Json;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Understanding;

namespace PartsSignal.Benchmarks.Fitting;

/// <summary>A shop's evidence with the right reading of its tables.</summary>
/// <param name="Name">Name of the set.</param>
/// <param name="Origin">Who wrote the files: sets of one origin are held out together.</param>
/// <param name="Sort">real, outside, made, dialect or sample: how much it counts.</param>
/// <param name="Evidence">The evidence.</param>
/// <param name="Truth">The right answers, table by table.</param>
internal sealed record TruthSet(string Name, string Origin, string Sort, ShopEvidence Evidence, IReadOnlyList<TableTruth> Truth)
{
    /// <summary>True for files of shops that exist.</summary>
    public bool IsReal => Sort == "real";

    /// <summary>Reads a set's files.</summary>
    public static TruthSet Read(string folder, string sort, HeaderLexicon lexicon, List<IReadOnlyList<TableSample>> read)
    {
        using var json = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "truth.json")));
        string name = Path.GetFileName(folder);
        string origin = sort == "real" ? json.RootElement.GetProperty("origin").GetString()!.Split(' ', ',')[0] : name;
        var limits = new ReadingLimits();
        var samples = new List<TableSample>();
        foreach (InputFile file in new InputFiles(Path.Combine(folder, "in"), limits).All.Where(f => !f.Name.EndsWith(".json", StringComparison.Ordinal)))
        {
            try
            {
                samples.AddRange(TableSampler.Read(file, limits, CancellationToken.None).Select(t => t.Sample));
            }
            catch (BadInputException bad)
            {
                Console.Error.WriteLine($"{name}: {bad.Message}");
            }
        }

        TableTruth[] truth = [.. samples.Select(s => TableTruth.Of(json.RootElement, s))];
        read.Add(samples);
        return new TruthSet(name, origin, sort, ShopEvidence.Of(samples, lexicon), truth);
    }

    /// <summary>The same with other words for headers.</summary>
    public TruthSet With(HeaderLexicon lexicon, IReadOnlyList<TableSample> samples) => this with
    {
        Evidence = new ShopEvidence([.. Evidence.Tables.Select((t, i) => t with { Columns = [.. t.Columns.Select((c, j) => c with { HeaderLevels = ShopEvidence.HeaderLevels(lexicon, samples[i].Columns[j]) })] })]),
    };

    /// <summary>How many tables of the set are the same log in other years.</summary>
    public int Twins(int table) => Enumerable.Range(0, Truth.Count).Count(t => t == table || (Truth[t].Kind == Truth[table].Kind && Evidence.Tables[t].IsTwin(Evidence.Tables[table])));

    /// <summary>The set as lines of text.</summary>
    /// <param name="name">Name to give it, in place of its own and those of its files.</param>
    /// <param name="origin">Name to give its origin.</param>
    public IEnumerable<string> Lines(string name, string origin)
    {
        var numbers = new Dictionary<string, int>(StringComparer.Ordinal);
        int NumberOf(string header) => numbers.TryGetValue(header, out int n) ? n : numbers[header] = numbers.Count;
        yield return string.Join(' ', "set", name, origin, Sort);
        for (int t = 0; t < Truth.Count; t++)
        {
            TableTruth truth = Truth[t];
            yield return string.Join(' ', "table", truth.Kind, List(truth.AlsoRight), List(truth.Essential), EvidenceText.Hex(Evidence.Tables[t].Levels) + ".", name == Name ? truth.Name.Replace(' ', '_') : "-", EvidenceText.Hex(Evidence.Tables[t].NameLevels));
            for (int c = 0; c < truth.Columns.Count; c++)
            {
                yield return string.Join(' ', "column", List(truth.Columns[c].Right), List(truth.Columns[c].Never), EvidenceText.Line(Evidence.Tables[t].Columns[c], NumberOf));
            }
        }
    }

    /// <summary>Reads what <see cref="Lines"/> wrote.</summary>
    public static IReadOnlyList<TruthSet> ReadLines(IEnumerable<string> lines)
    {
        var sets = new List<TruthSet>();
        foreach (string line in lines)
        {
            string[] words = line.Split(' ');
            switch (words[0])
            {
                case "set":
                    sets.Add(new TruthSet(words[1], words[2], words[3], new ShopEvidence(new List<TableEvidence>()), new List<TableTruth>()));
                    break;
                case "table":
                    ((List<TableTruth>)sets[^1].Truth).Add(new TableTruth(words[5], words[1], Words(words[2]), Words(words[3]), new List<ColumnTruth>()));
                    ((List<TableEvidence>)sets[^1].Evidence.Tables).Add(new TableEvidence(EvidenceText.Levels(words[6]), EvidenceText.Levels(words[4].TrimEnd('.')), new List<ColumnEvidence>()));
                    break;
                default:
                    ColumnEvidence column = EvidenceText.Read(words.AsSpan(3));
                    ((List<ColumnTruth>)sets[^1].Truth[^1].Columns).Add(new ColumnTruth(Words(words[1]), Words(words[2])));
                    ((List<ColumnEvidence>)sets[^1].Evidence.Tables[^1].Columns).Add(column);
                    break;
            }
        }

        return sets;
    }

    private static string List(IReadOnlyList<string> words) => words.Count == 0 ? "-" : string.Join(',', words);

    private static string[] Words(string list) => list == "-" ? [] : list.Split(',');
}

/// <summary>The right reading of a table.</summary>
/// <param name="Name">Its file and sheet.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="AlsoRight">Kinds that are right as well.</param>
/// <param name="Essential">Fields whose loss hurts.</param>
/// <param name="Columns">What each column is.</param>
internal sealed record TableTruth(string Name, string Kind, IReadOnlyList<string> AlsoRight, IReadOnlyList<string> Essential, IReadOnlyList<ColumnTruth> Columns)
{
    /// <summary>Finds the right reading of a sampled table; a table nobody described is none of a shop's.</summary>
    public static TableTruth Of(JsonElement root, TableSample sample)
    {
        string name = sample.Sheet is null ? sample.File : $"{sample.File}/{sample.Sheet}";
        JsonElement file = root.GetProperty("files").EnumerateArray().FirstOrDefault(f => f.GetProperty("file").GetString() == sample.File
            && (!f.TryGetProperty("sheet", out JsonElement s) || s.GetString() is null || s.GetString() == sample.Sheet));
        if (file.ValueKind == JsonValueKind.Undefined)
        {
            return new TableTruth(name, "none", [], [], [.. sample.Columns.Select(_ => new ColumnTruth([], []))]);
        }

        string kind = file.GetProperty("kind").GetString()!;
        string[] Texts(JsonElement of, string key) => of.TryGetProperty(key, out JsonElement list) ? [.. list.EnumerateArray().Select(t => t.GetString()!)] : [];
        ColumnTruth Column(ColumnSample column)
        {
            HashSet<string> names = [.. column.Names.Append(column.Name).Select(PlainHeader.Key)];
            string[] right = file.TryGetProperty("columns", out JsonElement columns) ? [.. columns.EnumerateObject().Where(f => f.Value.EnumerateArray().Any(h => names.Contains(PlainHeader.Key(h.GetString()!)))).Select(f => f.Name)] : [];
            string[] never = file.TryGetProperty("forbidden", out JsonElement forbidden) ? [.. forbidden.EnumerateObject().Where(f => names.Contains(PlainHeader.Key(f.Name))).SelectMany(f => f.Value.EnumerateArray()).Select(f => f.GetString()!)] : [];
            return new ColumnTruth([.. right.Where(f => f[0] != '+')], never);
        }

        return new TableTruth(name, kind, Texts(file, "kind_ok"), [.. Texts(file, "essential").Where(e => e[0] != '+')], [.. sample.Columns.Select(Column)]);
    }
}

/// <summary>What a column is.</summary>
/// <param name="Right">Fields it gives.</param>
/// <param name="Never">Fields it must never give.</param>
internal sealed record ColumnTruth(IReadOnlyList<string> Right, IReadOnlyList<string> Never);
