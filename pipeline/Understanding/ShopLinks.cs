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
    private static readonly string[] CodedFields = ["technician", "outcome", "complaint", "appliance_type", "brand", "supplier", "return_reason", "description"];
    private static readonly string[] UnitFields = ["serial", "model", "brand", "appliance_type", "made_on", "customer_name", "phone", "address"];
    private static readonly string[] ModelFields = ["model", "brand", "appliance_type"];
    private readonly OpenMaps _maps;
    private readonly ColumnLinks _links;
    private readonly List<(int Table, ColumnSample Column, int Other, ColumnSample Key, string Field)> _found = [];
    private readonly WordSets _words;
    private readonly Func<int, bool> _isDoubtful;

    private ShopLinks(OpenMaps maps, Func<int, bool> isDoubtful, WordSets words, ReadingAnswers answers) =>
        (_maps, _links, _isDoubtful, _words) = (maps, new ColumnLinks(maps, answers), isDoubtful, words);

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
        var open = new OpenMaps(tables, maps);
        var links = new ShopLinks(open, isDoubtful, words, answers);
        for (int t = 0; t < tables.Count; t++)
        {
            if (open[t] is not null && isOpen(t))
            {
                links.NameJobs(t);
                links.ReadCodes(t);
                links.NameUnits(t);
                links.NameParts(t);
                SupplierOfFile.Complete(open, t);
                VanColumns.Complete(open, t);
            }
        }

        links.NoteLinks();
        if (JobNumbers.Note(tables, open.All) is { } numbers)
        {
            open.Note(Array.FindIndex([.. open.All], m => m is { Kind: "jobs" } && m.Columns.ContainsKey("job_id")), numbers);
        }

        return (open.All, open.Notes, [.. links._links.Possible.Where(p => !links._found.Exists(f => f.Column == p.Column))]);
    }

    // Part lines and orders may name the job by another number than people do.
    private void NameJobs(int t)
    {
        SourceMap map = _maps[t]!;
        if (map.Kind is not ("job_parts" or "part_orders"))
        {
            return;
        }

        foreach (int other in _maps.Others(t).Where(o => _maps[o]!.Kind == "jobs" && _maps[o]!.Columns.ContainsKey("job_id")))
        {
            ColumnSample? number = _maps.Column(other, "job_id");
            if (number is null || _maps.Column(t, "job_id") is { } own && ColumnLinks.Points(own, number))
            {
                return;
            }

            foreach (ColumnSample column in _links.Candidates(t, "job_id"))
            {
                if (_links.KeyOf(t, column, other, k => k != number || _maps.FieldOf(t, column) is null) is { } key)
                {
                    if (key != number && IsBetterNumber(column, key, number) && _maps.FieldOf(other, key) is null)
                    {
                        _maps[other] = _maps[other]! with { Columns = new Dictionary<string, IReadOnlyList<string>>(_maps[other]!.Columns) { ["job_id"] = [key.Name] } };
                        _maps.Note(other, $"'{key.Name}' is the job number, since '{column.Name}' of {_maps.Sample(t).File} names jobs by it.");
                        number = key;
                    }

                    Give(t, "job_id", column, key == number ? null : new CodeList(_maps.Sample(other).File, _maps.Sample(other).Sheet, key.Name, number.Name), other, key);
                    return;
                }
            }

            if (NameJobsByBills(t, other, number))
            {
                return;
            }
        }
    }

    // Part lines of a bill: a list of bills, which nothing else reads, says for which job each one is.
    private bool NameJobsByBills(int t, int jobs, ColumnSample number)
    {
        foreach (int bills in Enumerable.Range(0, _maps.Tables.Count).Where(o => o != t && _maps[o] is null))
        {
            foreach (ColumnSample column in _links.Candidates(t, "job_id"))
            {
                if (_links.KeyOf(t, column, bills, _ => true) is { } bill && JobOf(bills, bill, jobs, number) is { } named)
                {
                    if (named.Key != number)
                    {
                        _maps[jobs] = _maps[jobs]! with { Columns = new Dictionary<string, IReadOnlyList<string>>(_maps[jobs]!.Columns) { ["job_id"] = [named.Key.Name] } };
                        _maps.Note(jobs, $"'{named.Key.Name}' is the job number, since '{named.Column.Name}' of {_maps.Sample(bills).File} names jobs by it.");
                    }

                    Give(t, "job_id", column, new CodeList(_maps.Sample(bills).File, _maps.Sample(bills).Sheet, bill.Name, named.Column.Name), bills, bill);
                    return true;
                }
            }
        }

        return false;
    }

    // The column of a list of bills that names jobs: by their number, or by one that both tables head alike and no other table goes by.
    private (ColumnSample Column, ColumnSample Key)? JobOf(int bills, ColumnSample bill, int jobs, ColumnSample number)
    {
        bool isFree = !_found.Exists(f => f.Other == jobs && f.Key == number) && !_maps.Others(jobs).Any(o => _maps.Column(o, "job_id") is { } own && ColumnLinks.Points(own, number));
        foreach (ColumnSample column in _maps.Sample(bills).Columns.Where(c => c != bill && !c.IsDates && !c.IsAmounts))
        {
            ColumnSample? key = _maps.Sample(jobs).Columns.FirstOrDefault(k => k.Values.IsKey && ColumnLinks.Points(column, k)
                && (k == number || (isFree && _maps.FieldOf(jobs, k) is null && PlainHeader.Key(k.Name) == PlainHeader.Key(column.Name))));
            if (key is not null)
            {
                return (column, key);
            }
        }

        return null;
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

        foreach (int other in _maps.Others(t).Where(o => _maps[o]!.Kind is "units" or "models"))
        {
            string own = _maps[other]!.Kind == "units" ? "serial" : "model";
            ColumnSample? named = _maps.Column(other, own);
            foreach (ColumnSample column in _links.Candidates(t, "serial", "model"))
            {
                if (_links.KeyOf(t, column, other, k => k != named || _maps.FieldOf(t, column) is "serial" or "model") is { } key
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
        bool isModel = _maps.Column(other, "model") == key;
        foreach (string field in isModel ? ModelFields : UnitFields)
        {
            string? taken = _maps[t]!.Columns.GetValueOrDefault(field)?[0];
            if ((taken is null || taken == column.Name) && _maps.Column(other, field) is { } meaning)
            {
                var list = new CodeList(_maps.Sample(other).File, _maps.Sample(other).Sheet, key.Name, meaning.Name);
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
        foreach (int other in _maps.Others(t).Where(o => _maps[o]!.Kind == "parts" && _maps[t]!.Kind is "jobs" or "job_parts" or "part_orders" or "van_counts"))
        {
            ColumnSample? number = _maps.Column(other, "part");
            if (number is null || _maps.Column(t, "part") is { } own && ColumnLinks.Points(own, number))
            {
                continue;
            }

            foreach (ColumnSample column in _links.Candidates(t, "part"))
            {
                if (_links.KeyOf(t, column, other, k => k != number) is { } key)
                {
                    Give(t, "part", column, new CodeList(_maps.Sample(other).File, _maps.Sample(other).Sheet, key.Name, number.Name), other, key);
                    return;
                }
            }
        }
    }

    // A table of no kind that has words beside codes is the list of what they mean.
    private void ReadCodes(int t)
    {
        HashSet<string> fields = [.. FieldCatalog.Of(_maps[t]!.Kind).Select(f => f.Name).Intersect(CodedFields)];
        foreach (ColumnSample column in _maps.Sample(t).Columns.Where(CodeMeanings.IsCodes))
        {
            string? given = _maps.FieldOf(t, column);
            if (given is not null && !fields.Contains(given))
            {
                continue;
            }

            foreach (int list in Enumerable.Range(0, _maps.Tables.Count).Where(o => o != t && MayBeList(o)))
            {
                string? FieldBy(ColumnSample key) => CodeMeanings.Of(_maps.Sample(list), key) is not { } words ? null
                    : given ?? CodeMeanings.Field([.. fields.Where(f => !_maps[t]!.Columns.ContainsKey(f))], column, _maps.Sample(list), words, _words);
                if (_links.KeyOf(t, column, list, k => FieldBy(k) is not null) is { } key && FieldBy(key) is { } field)
                {
                    ColumnSample meaning = CodeMeanings.Of(_maps.Sample(list), key)!;
                    _maps[list] = null;
                    Give(t, field, column, new CodeList(_maps.Sample(list).File, _maps.Sample(list).Sheet, key.Name, meaning.Name), list, key);
                    break;
                }
            }
        }
    }

    private bool MayBeList(int t) => _maps.Sample(t).Columns.Count is >= 2 and <= 8
        && (_maps[t] is null || (_isDoubtful(t) && _maps[t]!.Kind is not ("jobs" or "job_parts" or "part_orders") && _maps.Sample(t).Columns.Count <= 4));

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
            _maps.Note(t, string.Create(CultureInfo.InvariantCulture, $"'{column.Name}' gives {string.Join(", ", found.Select(f => f.Field))} by '{key.Name}' of {_maps.Sample(other).File}: {both:N0} of its {column.Values.Count:N0} values are there."));
            if (_maps[other] is null)
            {
                _maps.Note(other, $"Used for what '{column.Name}' of {_maps.Sample(t).File} means.");
            }
        }
    }
}
