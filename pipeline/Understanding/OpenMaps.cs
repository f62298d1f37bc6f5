using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>The tables of a shop with their maps, while these are completed by what the tables say of each other.</summary>
internal sealed class OpenMaps
{
    private readonly SourceMap?[] _maps;
    private readonly List<string>[] _notes;

    /// <summary>Starts from the maps as they are.</summary>
    /// <param name="tables">The tables.</param>
    /// <param name="maps">Their maps; null: left out.</param>
    public OpenMaps(IReadOnlyList<SampledTable> tables, IReadOnlyList<SourceMap?> maps) =>
        (Tables, _maps, _notes) = (tables, [.. maps], [.. tables.Select(_ => new List<string>())]);

    /// <summary>The tables.</summary>
    public IReadOnlyList<SampledTable> Tables { get; }

    /// <summary>The maps as they are now, in the order of the tables.</summary>
    public IReadOnlyList<SourceMap?> All => _maps;

    /// <summary>What was noted about each table.</summary>
    public IReadOnlyList<IReadOnlyList<string>> Notes => _notes;

    /// <summary>A table's map as it is now.</summary>
    public SourceMap? this[int t]
    {
        get => _maps[t];
        set => _maps[t] = value;
    }

    /// <summary>Notes something about a table, in a sentence.</summary>
    public void Note(int t, string sentence) => _notes[t].Add(sentence);

    /// <summary>What is decided from.</summary>
    public TableSample Sample(int t) => Tables[t].Sample;

    /// <summary>The other tables that are read.</summary>
    public IEnumerable<int> Others(int t) => Enumerable.Range(0, Tables.Count).Where(o => o != t && _maps[o] is not null);

    /// <summary>The field that a column gives, or null if it gives none.</summary>
    public string? FieldOf(int t, ColumnSample column) =>
        _maps[t]!.Columns.Where(c => c.Value.Contains(column.Name)).Select(c => c.Key).FirstOrDefault()
        ?? _maps[t]!.Lists.Where(l => l.Value.Column == column.Name).Select(l => l.Key).FirstOrDefault()
        ?? _maps[t]!.PartGroups.SelectMany(g => g).Where(g => g.Value == column.Name).Select(g => "group " + g.Key).FirstOrDefault();

    /// <summary>The one column that gives a field as it stands, or null.</summary>
    public ColumnSample? Column(int t, string field) =>
        _maps[t]!.Columns.TryGetValue(field, out IReadOnlyList<string>? headers) && headers.Count == 1 && !_maps[t]!.Lists.ContainsKey(field)
            ? Sample(t).Columns.FirstOrDefault(c => c.Name == headers[0])
            : null;
}
