namespace PartsSignal.SampleShop.Dialects;

/// <summary>One column with what it means. Its header is given last, when the whole table is known.</summary>
internal sealed record ColumnDraft(string Concept, IReadOnlyList<string> Fields, IReadOnlyList<string> Never, IReadOnlyList<Cell> Cells)
{
    public string Header { get; init; } = "";

    /// <summary>Number of the part group it belongs to; 0 for none.</summary>
    public int Group { get; init; }

    /// <summary>Header that is not worded by the office's style, such as the name of a van; null otherwise.</summary>
    public string? Fixed { get; init; }
}

/// <summary>A table as a shop keeps it, with the right reading of it.</summary>
internal sealed record TableDraft(string Name, string Kind, IReadOnlyList<ColumnDraft> Columns)
{
    public IReadOnlyList<string> KindsAlsoRight { get; init; } = [];

    public IReadOnlyList<string> Essential { get; init; } = [];

    public string Note { get; init; } = "";

    /// <summary>Rows before which a line with this text and the header again stand, as where years are stacked.</summary>
    public IReadOnlyDictionary<int, string> Banners { get; init; } = new Dictionary<int, string>();

    public int Rows => Columns.Count == 0 ? 0 : Columns[0].Cells.Count;

    public TableDraft Only(string name, IReadOnlyList<int> rows) =>
        this with { Name = name, Columns = [.. Columns.Select(c => c with { Cells = [.. rows.Select(r => c.Cells[r])] })] };
}

/// <summary>Collects the columns of a table whose concepts the committed list explains.</summary>
internal sealed class TableBuilder(string name, string kind, Chance.Dice dice)
{
    private readonly List<ColumnDraft> _columns = [];
    private readonly List<string> _essential = [];

    /// <summary>Adds a column if the shop keeps it.</summary>
    /// <param name="essential">Store field that is lost without it; null if the table can do without.</param>
    public TableBuilder Add<T>(string concept, IReadOnlyList<T> rows, Func<T, Cell> cell, string? essential = null, IReadOnlyList<string>? fields = null, int group = 0, double? present = null)
    {
        ConceptRule rule = DialectWords.Concepts[concept];
        if (!dice.Chance(present ?? rule.Present))
        {
            return this;
        }

        _columns.Add(new ColumnDraft(concept, fields ?? rule.Fields, [.. rule.Never.Except(fields ?? rule.Fields)], [.. rows.Select(cell)]) { Group = group });
        if (essential is not null && !_essential.Contains(essential))
        {
            _essential.Add(essential);
        }

        return this;
    }

    public TableBuilder AddFixed<T>(string header, IReadOnlyList<T> rows, Func<T, Cell> cell, IReadOnlyList<string> fields, IReadOnlyList<string> never, string? essential = null)
    {
        _columns.Add(new ColumnDraft("", fields, never, [.. rows.Select(cell)]) { Fixed = header });
        if (essential is not null && !_essential.Contains(essential))
        {
            _essential.Add(essential);
        }

        return this;
    }

    public TableDraft Build(string note = "", IReadOnlyList<string>? alsoRight = null) =>
        new(name, kind, _columns) { Essential = _essential, Note = note, KindsAlsoRight = alsoRight ?? [] };
}
