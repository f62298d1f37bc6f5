namespace PartsSignal.Pipeline.Understanding;

/// <summary>What columns of the shop's tables have in common: which column names the rows of another table, and which points to it.</summary>
internal sealed class ShopRelations
{
    private const double Overlap = 0.5;
    private const int TellingColumns = 6;
    private readonly IReadOnlyList<TableSample> _tables;
    private readonly Dictionary<ColumnSample, List<Link>> _points = [];
    private readonly Dictionary<ColumnSample, List<Link>> _pointedAt = [];
    private readonly Dictionary<ColumnSample, List<Link>> _shares = [];
    private readonly Dictionary<ColumnSample, TableSample> _home = [];

    /// <summary>Compares the columns of all tables.</summary>
    public ShopRelations(IReadOnlyList<TableSample> tables)
    {
        _tables = tables;
        foreach (TableSample table in tables)
        {
            foreach (ColumnSample column in table.Columns)
            {
                _home.Add(column, table);
            }
        }

        (TableSample Table, ColumnSample Column)[] all = [.. tables.SelectMany(t => t.Columns.Where(Comparable).Select(c => (t, c)))];
        foreach ((TableSample table, ColumnSample column) in all)
        {
            foreach ((TableSample otherTable, ColumnSample other) in all)
            {
                if (otherTable != table && !IsTwin(table, otherTable) && Alike(column, other) && column.Values.ShareIn(other.Values) is >= Overlap and var share)
                {
                    Add(_shares, column, new Link(otherTable, other, share));
                    if (other.Values.IsKey && !(column.Values.IsKey && column.Values.Count >= other.Values.Count))
                    {
                        Add(_points, column, new Link(otherTable, other, share));
                        Add(_pointedAt, other, new Link(table, column, share));
                    }
                }
            }
        }
    }

    /// <summary>A column of another table that shares values.</summary>
    /// <param name="Table">The other table.</param>
    /// <param name="Column">Its column.</param>
    /// <param name="Share">Share of the values in common.</param>
    public sealed record Link(TableSample Table, ColumnSample Column, double Share);

    /// <summary>Columns of other tables that hold half or more of a column's values.</summary>
    public IReadOnlyList<Link> Shares(ColumnSample column) => _shares.GetValueOrDefault(column, []);

    /// <summary>Columns that name the rows of other tables, and hold this one's values.</summary>
    public IReadOnlyList<Link> PointsTo(ColumnSample column) => _points.GetValueOrDefault(column, []);

    /// <summary>Columns of other tables whose values this one, which names its rows, holds.</summary>
    public IReadOnlyList<Link> PointedAtBy(ColumnSample column) => _pointedAt.GetValueOrDefault(column, []);

    /// <summary>Adds the evidence of one column.</summary>
    public void Add(ColumnSample column, FeatureList list)
    {
        TableSample home = _home[column];
        IReadOnlyList<Link> points = PointsTo(column), pointed = PointedAtBy(column), shares = Shares(column);
        list.Share("points_to_key", points.Count == 0 ? 0 : points.Max(l => l.Share));
        list.Size("rows_of_target", points.Count == 0 ? 0 : points.Max(l => l.Table.Rows));
        list.Size("rows_a_target", points.Count == 0 ? 0 : 10.0 * home.Rows / Math.Max(1, points.Max(l => l.Column.Values.Count)));
        list.Share("target_covered", points.Count == 0 ? 0 : points.Max(l => l.Column.Values.ShareIn(column.Values)));
        list.Flag("target_has_dates", points.Any(l => l.Table.Columns.Any(c => c.IsDates)));
        list.Flag("target_has_text", points.Any(l => l.Table.Columns.Any(IsWords)));
        list.Count("pointed_at_by", pointed.Select(l => l.Table).Distinct().Count());
        list.Size("rows_pointing", pointed.Count == 0 ? 0 : 10.0 * pointed.Max(l => l.Table.Rows) / Math.Max(1, home.Rows));
        list.Share("shares_values", shares.Count == 0 ? 0 : shares.Max(l => l.Share));
        list.Count("shared_by", shares.Select(l => l.Table).Distinct().Count());
        list.Flag("same_header", shares.Any(l => l.Column.Name.Equals(column.Name, StringComparison.OrdinalIgnoreCase)));
        list.Flag("is_key", column.Values.IsKey);
        list.Flag("first_key", column.Values.IsKey && home.Columns.First(c => c.Values.IsKey) == column);
    }

    /// <summary>Which level of a table is the number of its rows.</summary>
    public const int LevelOfRows = 1;

    /// <summary>Which levels of a table tell of its kind: not how large it is, nor how many there are.</summary>
    public static IReadOnlyList<int> LevelsForKinds { get; } = [3, 4, 5, 6, 7, 8, 10, 11];

    /// <summary>Adds the evidence of a table, which holds for all its columns.</summary>
    public void Add(TableSample table, FeatureList list)
    {
        list.Count("tables", _tables.Count);
        list.Size("rows", table.Rows);
        list.Count("columns", table.Columns.Count);
        list.Count("keys", table.Columns.Count(c => c.Values.IsKey));
        list.Count("dates", table.Columns.Count(c => c.IsDates));
        list.Count("texts", table.Columns.Count(IsWords));
        list.Count("numbers", table.Columns.Count(c => c.IsNumbers));
        list.Count("points_to_tables", table.Columns.SelectMany(PointsTo).Select(l => l.Table).Distinct().Count());
        list.Count("pointed_at_by_tables", table.Columns.SelectMany(PointedAtBy).Select(l => l.Table).Distinct().Count());
        list.Share("largest", table.Rows / (double)Math.Max(1, _tables.Max(t => t.Rows)));
        list.Share("top_text", table.Columns.Count == 0 ? 0 : table.Columns.Max(c => IsWords(c) ? (double)c.Values.Count / Math.Max(1, c.Values.Filled) : 0));
        list.Flag("repeats", table.Columns.Any(c => c.Repeats > 1));
    }

    /// <summary>True for tables of the same columns: years of one log.</summary>
    public static bool IsTwin(TableSample a, TableSample b) =>
        a.Columns.Count >= 2 && a.Columns.Count(c => b.Columns.Any(o => o.Name.Equals(c.Name, StringComparison.OrdinalIgnoreCase))) * 10 >= 7 * Math.Max(a.Columns.Count, b.Columns.Count);

    /// <summary>
    /// True for tables of the same columns whose names differ in numbers and months alone. Two tables of two columns may look
    /// alike and tell of different things: repairs and installations, each a machine and a day.
    /// </summary>
    public static bool AreOneLog(TableSample a, TableSample b) => a == b || (IsTwin(a, b) && (Math.Max(a.Columns.Count, b.Columns.Count) >= TellingColumns || Stem(a) == Stem(b)));

    private static string Stem(TableSample table) => string.Join(' ', PlainHeader.Words(Path.GetFileNameWithoutExtension(table.File) + " " + table.Sheet).Where(w => !char.IsAsciiDigit(w[0]) && !MonthHeaders.IsMonth(w)));

    private static bool IsWords(ColumnSample column) => column.Filled > 0 && !column.IsDates && !column.IsNumbers && column.Texts.Take(50).Count(t => t.Contains(' ')) * 3 >= Math.Min(50, column.Filled);

    // Small numbers, days and amounts stand everywhere and relate nothing.
    private static bool Comparable(ColumnSample column) =>
        column.Values.Count >= 4 && !column.IsDates && column.Values.Characters <= 60.0 * column.Values.Filled
        && !column.IsAmounts
        && !(column.IsNumbers && column.Values.Count < 12 && column.Values.Characters < 2.5 * column.Values.Filled);

    // Plain numbers only relate where one of the two names its rows and both reach about as far.
    private static bool Alike(ColumnSample a, ColumnSample b) => a.IsNumbers == b.IsNumbers || (a.NumberShare > 0.3 && b.NumberShare > 0.3);

    private static void Add(Dictionary<ColumnSample, List<Link>> links, ColumnSample column, Link link) =>
        (links.TryGetValue(column, out List<Link>? list) ? list : links[column] = []).Add(link);
}
