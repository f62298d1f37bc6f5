using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Staging;

/// <summary>A source's map applied to the header of one file.</summary>
internal sealed class FieldMap
{
    private readonly SourceMap _map;
    private readonly ColumnNames _columns;
    private readonly List<MappedField> _used = [];
    private readonly Dictionary<string, MappedField> _fields = new(StringComparer.Ordinal);

    /// <summary>Checks that every header that the map names is in the file.</summary>
    /// <exception cref="BadInputException">Headers are missing; all of them together.</exception>
    public FieldMap(string file, SourceMap map, IReadOnlyList<string> header)
    {
        _map = map;
        _columns = new ColumnNames(header);
        string[] missing = [.. map.Columns.Values.SelectMany(c => c)
            .Concat(map.PartGroups.SelectMany(g => g.Values))
            .Where(h => _columns.Find(h) < 0)
            .Distinct(StringComparer.Ordinal)];
        if (missing.Length > 0)
        {
            string has = string.Join(", ", _columns.All.Take(40));
            throw new BadInputException([.. missing.Select(m => $"{file}: has no column '{m}'. Its header reads: {has}. Correct the map in shop.json or give the file a map of its own.")]);
        }

        Width = header.Count;
    }

    /// <summary>Number of columns.</summary>
    public int Width { get; }

    /// <summary>Every field asked for that the file gives, in the order asked; what the row's hash covers.</summary>
    public IReadOnlyList<MappedField> Used => _used;

    /// <summary>The columns that no field asked for so far reads.</summary>
    public IEnumerable<UnreadColumn> Unread =>
        Enumerable.Range(0, Width).Where(c => !_used.Exists(f => f.Columns.Contains(c))).Select(c => new UnreadColumn(c, _columns.All[c]));

    /// <summary>Groups of part columns in the map.</summary>
    public int PartGroups => _map.PartGroups.Count;

    /// <summary>Put before every job number.</summary>
    public string JobPrefix => _map.JobPrefix ?? "";

    /// <summary>Supplier of every row, or null if a column says.</summary>
    public string? Supplier => _map.Supplier;

    /// <summary>The field of that name.</summary>
    public MappedField Field(string name)
    {
        if (!_fields.TryGetValue(name, out MappedField? field))
        {
            field = Make(name, _map.Columns.GetValueOrDefault(name) ?? StandIn(name));
            _fields.Add(name, field);
        }

        return field;
    }

    /// <summary>The field of that name in one of the groups of part columns.</summary>
    public MappedField Field(string name, int group) =>
        Make(name, _map.PartGroups[group].TryGetValue(name, out string? header) ? [header] : null);

    private IReadOnlyList<string>? StandIn(string name) =>
        !_map.Fixed.ContainsKey(name) && FieldCatalog.Find(_map.Kind)?.FirstOrDefault(f => f.Name == name)?.StandIn is { } other ? _map.Columns.GetValueOrDefault(other) : null;

    private MappedField Make(string name, IReadOnlyList<string>? headers)
    {
        int[] columns = headers is null ? [] : [.. headers.Select(_columns.Find)];
        var field = new MappedField(name, columns, _map.Fixed.GetValueOrDefault(name), WordsOf(name)) { IsLookedUp = _map.Lists.GetValueOrDefault(name)?.Column is not null };
        if (field.IsMapped)
        {
            _used.Add(field);
        }

        return field;
    }

    private Dictionary<string, string>? WordsOf(string name) =>
        _map.Words.TryGetValue(name, out IReadOnlyDictionary<string, string>? words)
            ? words.GroupBy(w => w.Key.Trim(), StringComparer.OrdinalIgnoreCase).ToDictionary(g => g.Key, g => g.First().Value, StringComparer.OrdinalIgnoreCase)
            : null;
}

/// <summary>A column that gives no field.</summary>
/// <param name="Index">Its position from 0.</param>
/// <param name="Header">Its header.</param>
internal readonly record struct UnreadColumn(int Index, string Header);
