namespace PartsSignal.Pipeline.Understanding;

/// <summary>All evidence of a column, its header apart.</summary>
internal static class ColumnFeatures
{
    private static readonly Lazy<Dictionary<string, int>> Places = new(() =>
    {
        var table = new TableSample("", null, 0, [new ColumnSample("", 0, []) { Values = new ValueSet() }]);
        return Of(table, 0, new RowFeatures(table), new ShopRelations([table])).Names.Index().ToDictionary(n => n.Item, n => n.Index, StringComparer.Ordinal);
    });

    /// <summary>Place of a feature among a column's levels.</summary>
    public static int Place(string name) => Places.Value[name];

    /// <summary>Gathers it.</summary>
    public static FeatureList Of(TableSample table, int at, RowFeatures rows, ShopRelations relations)
    {
        ColumnSample column = table.Columns[at];
        var list = new FeatureList();
        CellFeatures.Add(column, list);
        DateFeatures.Add(table, column, list);
        rows.Add(at, list);
        relations.Add(column, list);
        list.Share("place", table.Columns.Count < 2 ? 0 : (double)at / (table.Columns.Count - 1));
        list.Count("repeats", column.Repeats);
        list.Flag("no_header", column.Name.StartsWith('#'));
        return list;
    }
}
