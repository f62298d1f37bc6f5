using System.Globalization;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>
/// Completes the maps of a shop by what its tables say of each other: codes get the words of a list, machines and parts the
/// numbers of their register, part lines the numbers of their jobs, and a file its supplier. Columns are related by their
/// values; what was found is noted with the count that proves it.
/// </summary>
internal sealed class ShopLinks
{
    private const double Covered = 0.95;
    private const double Half = 0.5;
    private const int FewestValues = 2;
    private static readonly string[] CodedFields = ["technician", "outcome", "complaint", "appliance_type", "brand", "supplier", "return_reason", "description"];
    private static readonly string[] UnitFields = ["serial", "model", "brand", "appliance_type", "made_on", "customer_name", "phone", "address"];
    private static readonly string[] ModelFields = ["model", "brand", "appliance_type"];
    private readonly IReadOnlyList<SampledTable> _tables;
    private readonly SourceMap?[] _maps;
    private readonly List<string>[] _notes;
    private readonly List<(int Table, ColumnSample Column, int Other, ColumnSample Key, string Field)> _found = [];
    private readonly List<PossibleLink> _possible = [];
    private readonly WordSets _words;
    private readonly ReadingAnswers _answers;
    private readonly Func<int, bool> _isDoubtful;

    private ShopLinks(IReadOnlyList<SampledTable> tables, SourceMap?[] maps, Func<int, bool> isDoubtful, WordSets words, ReadingAnswers answers)
    {
        (_tables, _isDoubtful, _words, _answers) = (tables, isDoubtful, words, answers);
        _maps = [.. maps];
        _notes = [.. tables.Select(_ => new List<string>())];
    }

    /// <summary>The maps completed, what to note about each table, and which links a person should confirm.</summary>
    /// <param name="tables">The tables.</param>
    /// <param name="maps">Their maps; null: left out.</param>
    /// <param name="isOpen">Whether a table's map may be completed.</param>
    /// <param name="isDoubtful">Whether it is open what kind of table it is: then it may be a list of codes.</param>
    /// <param name="words">The shop's words.</param>
    /// <param name="answers">What a person has settled.</param>
    public static (IReadOnlyList<SourceMap?> Maps, IReadOnlyList<IReadOnlyList<string>> Notes, IReadOnlyList<PossibleLink> Possible) Complete(
        IReadOnlyList<SampledTable> tables, SourceMap?[] maps, Func<int, bool> isOpen, Func<int, bool> isDoubtful, WordSets words, ReadingAnswers answers)
    {
        var links = new ShopLinks(tables, maps, isDoubtful, words, answers);
        for (int t = 0; t < tables.Count; t++)
        {
            if (links._maps[t] is not null && isOpen(t))
            {
                links.NameJobs(t);
                links.ReadCodes(t);
                links.NameUnits(t);
                links.NameParts(t);
                links.NameSupplier(t);
                links.NameVans(t);
            }
        }

        links.NoteLinks();
        if (JobNumbers.Note(tables, links._maps) is { } numbers)
        {
            links._notes[Array.FindIndex(links._maps, m => m is { Kind: "jobs" } && m.Columns.ContainsKey("job_id"))].Add(numbers);
        }

        return (links._maps, links._notes, [.. links._possible.Where(p => !links._found.Exists(f => f.Column == p.Column))]);
    }

    // Part lines and orders may name the job by another number than people do.
    private void NameJobs(int t)
    {
        SourceMap map = _maps[t]!;
        if (map.Kind is not ("job_parts" or "part_orders"))
        {
            return;
        }

        foreach (int other in Others(t).Where(o => _maps[o]!.Kind == "jobs" && _maps[o]!.Columns.ContainsKey("job_id")))
        {
            ColumnSample? number = Column(other, "job_id");
            if (number is null || Column(t, "job_id") is { } own && Points(own, number))
            {
                return;
            }

            foreach (ColumnSample column in Candidates(t, "job_id"))
            {
                if (KeyOf(t, column, other, k => k != number || FieldOf(t, column) is null) is { } key)
                {
                    if (key != number && IsBetterNumber(column, key, number) && FieldOf(other, key) is null)
                    {
                        _maps[other] = _maps[other]! with { Columns = new Dictionary<string, IReadOnlyList<string>>(_maps[other]!.Columns) { ["job_id"] = [key.Name] } };
                        _notes[other].Add($"'{key.Name}' is the job number, since '{column.Name}' of {_tables[t].Sample.File} names jobs by it.");
                        number = key;
                    }

                    Give(t, "job_id", column, key == number ? null : new CodeList(_tables[other].Sample.File, _tables[other].Sample.Sheet, key.Name, number.Name), other, key);
                    return;
                }
            }
        }
    }

    // The number that both tables head alike, unless the other one is headed more like a job number.
    private static bool IsBetterNumber(ColumnSample column, ColumnSample key, ColumnSample number)
    {
        int at = ((IList<string>)HeaderLexicon.Shipped.Fields).IndexOf("job_id");
        return PlainHeader.Key(column.Name) == PlainHeader.Key(key.Name) && HeaderLexicon.Shipped.Match(key.Name)[at] >= HeaderLexicon.Shipped.Match(number.Name)[at];
    }

    // Jobs may name a machine of the register by a number of its own: that number is the machine's, and what the register says of it is looked up.
    private void NameUnits(int t)
    {
        if (_maps[t]!.Kind != "jobs")
        {
            return;
        }

        foreach (int other in Others(t).Where(o => _maps[o]!.Kind is "units" or "models"))
        {
            string own = _maps[other]!.Kind == "units" ? "serial" : "model";
            ColumnSample? named = Column(other, own);
            foreach (ColumnSample column in Candidates(t, "serial", "model"))
            {
                if (KeyOf(t, column, other, k => k != named || FieldOf(t, column) is "serial" or "model") is { } key
                    && NameUnits(t, column, other, key, own))
                {
                    break;
                }
            }
        }
    }

    private bool NameUnits(int t, ColumnSample column, int other, ColumnSample key, string own)
    {
        bool any = false;
        bool isModel = Column(other, "model") == key;
        foreach (string field in isModel ? ModelFields : UnitFields)
        {
            string? taken = _maps[t]!.Columns.GetValueOrDefault(field)?[0];
            if ((taken is null || taken == column.Name) && Column(other, field) is { } meaning)
            {
                var list = new CodeList(_tables[other].Sample.File, _tables[other].Sample.Sheet, key.Name, meaning.Name);
                Give(t, field, column, meaning == key ? null : field == own ? list : list with { Column = column.Name }, other, key);
                any = true;
            }
        }

        // What names a machine in the register is not its model.
        if (any && !isModel && _maps[t]!.Columns.GetValueOrDefault("model") is [var model] && model == column.Name)
        {
            _maps[t] = _maps[t]! with { Columns = _maps[t]!.Columns.Where(c => c.Key != "model").ToDictionary(c => c.Key, c => c.Value, StringComparer.Ordinal) };
        }

        return any;
    }

    private void NameParts(int t)
    {
        foreach (int other in Others(t).Where(o => _maps[o]!.Kind == "parts" && _maps[t]!.Kind is "jobs" or "job_parts" or "part_orders" or "van_counts"))
        {
            ColumnSample? number = Column(other, "part");
            if (number is null || Column(t, "part") is { } own && Points(own, number))
            {
                continue;
            }

            foreach (ColumnSample column in Candidates(t, "part"))
            {
                if (KeyOf(t, column, other, k => k != number) is { } key)
                {
                    Give(t, "part", column, new CodeList(_tables[other].Sample.File, _tables[other].Sample.Sheet, key.Name, number.Name), other, key);
                    return;
                }
            }
        }
    }

    // A table of no kind that has words beside codes is the list of what they mean.
    private void ReadCodes(int t)
    {
        HashSet<string> fields = [.. FieldCatalog.Of(_maps[t]!.Kind).Select(f => f.Name).Intersect(CodedFields)];
        foreach (ColumnSample column in _tables[t].Sample.Columns.Where(CodeMeanings.IsCodes))
        {
            string? given = FieldOf(t, column);
            if (given is not null && !fields.Contains(given))
            {
                continue;
            }

            foreach (int list in Enumerable.Range(0, _tables.Count).Where(o => o != t && MayBeList(o)))
            {
                string? FieldBy(ColumnSample key) => CodeMeanings.Of(_tables[list].Sample, key) is not { } words ? null
                    : given ?? CodeMeanings.Field([.. fields.Where(f => !_maps[t]!.Columns.ContainsKey(f))], column, _tables[list].Sample, words, _words);
                if (KeyOf(t, column, list, k => FieldBy(k) is not null) is { } key && FieldBy(key) is { } field)
                {
                    ColumnSample meaning = CodeMeanings.Of(_tables[list].Sample, key)!;
                    _maps[list] = null;
                    Give(t, field, column, new CodeList(_tables[list].Sample.File, _tables[list].Sample.Sheet, key.Name, meaning.Name), list, key);
                    break;
                }
            }
        }
    }

    private bool MayBeList(int t) => _tables[t].Sample.Columns.Count is >= 2 and <= 8
        && (_maps[t] is null || (_isDoubtful(t) && _maps[t]!.Kind is not ("jobs" or "job_parts" or "part_orders") && _tables[t].Sample.Columns.Count <= 4));

    // A supplier whom another table names, and this file's name too.
    private void NameSupplier(int t)
    {
        SourceMap map = _maps[t]!;
        if (map.Kind is not ("part_orders" or "parts" or "part_aliases") || map.Supplier is not null || map.Columns.ContainsKey("supplier"))
        {
            return;
        }

        IEnumerable<(string, string)> suppliers = Others(t).SelectMany(o => (Column(o, "supplier")?.Texts ?? []).Distinct(StringComparer.OrdinalIgnoreCase).Select(s => (s, _tables[o].Sample.File)));
        if (SupplierOfFile.Find(map, suppliers) is { } found)
        {
            _maps[t] = map with { Supplier = found.Name };
            _notes[t].Add($"Supplier: {found.Name} for every row, since the file is named so and {found.KnownFrom} knows that name.");
        }
    }

    // Pieces on hand may stand in a column for each van, which jobs name by its number or by who drives it.
    private void NameVans(int t)
    {
        if (_maps[t]!.Kind == "van_counts" && _maps[t]!.Columns.GetValueOrDefault("on_hand", []) is var counts && MonthHeaders.AreMonths(counts))
        {
            _notes[t].Add($"Months in columns: '{counts[0]}' to '{counts[^1]}'; each is loaded as rows counted on its first day.");
            return;
        }

        if (_maps[t]!.Kind != "van_counts" || _maps[t]!.Columns.ContainsKey("van"))
        {
            return;
        }

        IEnumerable<string> vans = Others(t).Where(o => _maps[o]!.Kind == "jobs").SelectMany(o => new[] { Column(o, "van"), Column(o, "technician") }).OfType<ColumnSample>().SelectMany(c => c.Texts);
        string[] free = [.. _tables[t].AllColumns.Where(c => (FieldOf(t, c) is null or "on_hand") && c.IsNumbers).Select(c => c.Name)];
        if (VanColumns.Complete(_maps[t]!, free, vans.ToHashSet()) is { } found)
        {
            _maps[t] = found.Map;
            _notes[t].Add(found.Note);
        }
    }

    private void Give(int t, string field, ColumnSample column, CodeList? list, int other, ColumnSample key)
    {
        SourceMap map = _maps[t]!;
        var columns = map.Columns.ToDictionary(c => c.Key, c => c.Value, StringComparer.Ordinal);
        if (list?.Column is null)
        {
            columns[field] = [column.Name];
        }
        else
        {
            columns.Remove(field);
        }

        var lists = map.Lists.ToDictionary(l => l.Key, l => l.Value, StringComparer.Ordinal);
        if (list is not null)
        {
            lists[field] = list;
        }

        _maps[t] = map with { Columns = columns, Lists = lists };
        _found.Add((t, column, other, key, list is null ? field : $"{field} ('{list.Meaning}')"));
    }

    private void NoteLinks()
    {
        foreach (var found in _found.GroupBy(f => (f.Table, f.Column, f.Other, f.Key)))
        {
            (int t, ColumnSample column, int other, ColumnSample key) = found.Key;
            int both = (int)Math.Round(column.Values.ShareIn(key.Values) * column.Values.Count);
            _notes[t].Add(string.Create(CultureInfo.InvariantCulture, $"'{column.Name}' gives {string.Join(", ", found.Select(f => f.Field))} by '{key.Name}' of {_tables[other].Sample.File}: {both:N0} of its {column.Values.Count:N0} values are there."));
            if (_maps[other] is null)
            {
                _notes[other].Add($"Used for what '{column.Name}' of {_tables[t].Sample.File} means.");
            }
        }
    }

    private IEnumerable<int> Others(int t) => Enumerable.Range(0, _tables.Count).Where(o => o != t && _maps[o] is not null);

    // Numbers of the rows point to nothing, though other tables number their rows too.
    private static bool NumbersRows(ColumnSample column, long rows) => column.IsNumbers && column.Values.IsKey
        && column.Numbers.OfType<double>().ToArray() is { Length: > 1 } numbers && numbers[^1] <= rows && numbers.Zip(numbers.Skip(1)).All(n => n.First < n.Second);

    // The column that the map reads for one of the fields first, then those that it does not read.
    private IEnumerable<ColumnSample> Candidates(int t, params string[] fields) =>
        _tables[t].Sample.Columns.Where(c => (FieldOf(t, c) is not { } field || fields.Contains(field)) && !NumbersRows(c, _tables[t].Sample.Rows)).OrderBy(c => FieldOf(t, c) is null ? 1 : 0).ToList();

    private string? FieldOf(int t, ColumnSample column) =>
        _maps[t]!.Columns.Where(c => c.Value.Contains(column.Name)).Select(c => c.Key).FirstOrDefault()
        ?? _maps[t]!.Lists.Where(l => l.Value.Column == column.Name).Select(l => l.Key).FirstOrDefault()
        ?? _maps[t]!.PartGroups.SelectMany(g => g).Where(g => g.Value == column.Name).Select(g => "group " + g.Key).FirstOrDefault();

    private ColumnSample? Column(int t, string field) =>
        _maps[t]!.Columns.TryGetValue(field, out IReadOnlyList<string>? headers) && headers.Count == 1 && !_maps[t]!.Lists.ContainsKey(field)
            ? _tables[t].Sample.Columns.FirstOrDefault(c => c.Name == headers[0])
            : null;

    private IEnumerable<ColumnSample> Keys(int t) => _tables[t].Sample.Columns.Where(c => c.Values.IsKey && !c.IsDates);

    // The column of another table that a column points to: by its values, or as a person said. Where only a part of the
    // values is there, that is noted for a question.
    private ColumnSample? KeyOf(int t, ColumnSample column, int other, Func<ColumnSample, bool> may)
    {
        if (LinkSaid(t, column) is { } said)
        {
            return Keys(other).FirstOrDefault(k => PossibleLink.ChoiceOf(_tables[other], k) == said && may(k));
        }

        ColumnSample? partly = null;
        foreach (ColumnSample key in Keys(other))
        {
            double share = ShareIn(column, key);
            if (share < Half || !IsNamed(column, key, other) || !may(key))
            {
                continue;
            }

            if (share >= Covered)
            {
                return key;
            }

            partly = partly is null || share > ShareIn(column, partly) ? key : partly;
        }

        // Where both are read as the same thing, they are joined by it anyway.
        if (partly is not null && !(FieldOf(t, column) is { } field && _maps[other] is not null && Column(other, field) == partly))
        {
            _possible.Add(new PossibleLink(_tables[t], column, _tables[other], partly, ShareIn(column, partly)));
        }

        return null;
    }

    // What is answered for one year of a log holds for all.
    private string? LinkSaid(int t, ColumnSample column) => _tables
        .Where(o => o == _tables[t] || ShopRelations.IsTwin(o.Sample, _tables[t].Sample))
        .Select(o => _answers.Link(ReadingAnswers.KeyOf(o.Sample), column.Name)).FirstOrDefault(a => a is not null);

    private static bool Points(ColumnSample column, ColumnSample key) => ShareIn(column, key) >= Covered;

    private static double ShareIn(ColumnSample column, ColumnSample key) => column.Values.Count >= FewestValues ? column.Values.ShareIn(key.Values) : 0;

    // Small plain numbers are found everywhere: there the headers must agree too.
    private bool IsNamed(ColumnSample column, ColumnSample key, int home)
    {
        if (!column.IsNumbers && column.Values.Count >= 4)
        {
            return true;
        }

        string[] own = [.. PlainHeader.Words(column.Name).Where(w => w.Length >= 3)];
        string stem = Path.GetFileNameWithoutExtension(_tables[home].Sample.Sheet ?? _tables[home].Sample.File);
        string[] theirs = [.. PlainHeader.Words(key.Name).Concat(PlainHeader.Words(stem)).Where(w => w.Length >= 3 && !IsGeneral(w))];
        return Array.Exists(own, o => !IsGeneral(o) && Array.Exists(theirs, w => w.StartsWith(o[..Math.Min(o.Length, 4)], StringComparison.Ordinal)));
    }

    private static bool IsGeneral(string word) => word is "code" or "number" or "nummer" or "num" or "key" or "ref" or "reference" or "list" or "liste" or "table" or "the" or "data" or "export";
}
