namespace PartsSignal.Pipeline.Understanding.Evidence;

/// <summary>All evidence of the columns of a shop, headers apart.</summary>
internal sealed class ColumnFeatures
{
    private readonly Dictionary<ColumnSample, byte[]> _levels = [];
    private readonly Dictionary<TableSample, byte[]> _tables = [];

    /// <summary>Gathers it.</summary>
    /// <param name="tables">The tables of the shop.</param>
    /// <param name="relations">What they have in common.</param>
    public ColumnFeatures(IReadOnlyList<TableSample> tables, ShopRelations relations)
    {
        foreach (TableSample table in tables)
        {
            var whole = new FeatureList();
            relations.Add(table, whole);
            _tables.Add(table, [.. whole.Levels]);
            var rows = new RowFeatures(table);
            for (int i = 0; i < table.Columns.Count; i++)
            {
                ColumnSample column = table.Columns[i];
                var list = new FeatureList();
                CellFeatures.Add(column, list);
                DateFeatures.Add(table, column, list);
                rows.Add(i, list);
                relations.Add(column, list);
                list.Share("place", table.Columns.Count < 2 ? 0 : (double)i / (table.Columns.Count - 1));
                list.Count("repeats", column.Repeats);
                list.Flag("no_header", column.Name.StartsWith('#'));
                _levels.Add(column, [.. list.Levels]);
                Names = list.Names;
                TableNames = whole.Names;
            }
        }
    }

    /// <summary>Names of the evidence of a column.</summary>
    public IReadOnlyList<string> Names { get; } = [];

    /// <summary>Names of the evidence of a table.</summary>
    public IReadOnlyList<string> TableNames { get; } = [];

    /// <summary>Levels of a column, 0 to 15.</summary>
    public byte[] Of(ColumnSample column) => _levels[column];

    /// <summary>Levels of a table, 0 to 15.</summary>
    public byte[] Of(TableSample table) => _tables[table];
}
