namespace PartsSignal.Pipeline.Understanding;

/// <summary>All evidence of a column, its header apart.</summary>
internal static class ColumnFeatures
{
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
