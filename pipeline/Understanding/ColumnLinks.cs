namespace PartsSignal.Pipeline.Understanding;

/// <summary>Finds the column of another table that a column points to: by its values, or as a person said.</summary>
/// <param name="maps">The tables and their maps.</param>
/// <param name="answers">What a person has settled.</param>
internal sealed class ColumnLinks(OpenMaps maps, ReadingAnswers answers)
{
    private const double Covered = 0.95;
    private const double Half = 0.5;
    private const int FewestValues = 2;
    private const int EnoughNumbers = 30;
    private const double MostDense = 0.5;
    private readonly List<PossibleLink> _possible = [];

    /// <summary>Links that may hold, which a person should confirm.</summary>
    public IReadOnlyList<PossibleLink> Possible => _possible;

    /// <summary>Columns that may point to something: the one that the map reads for one of the fields first, then those that it does not read.</summary>
    public IEnumerable<ColumnSample> Candidates(int t, params string[] fields) =>
        maps.Sample(t).Columns.Where(c => (maps.FieldOf(t, c) is not { } field || fields.Contains(field)) && !c.IsAmounts && !NumbersRows(c, maps.Sample(t).Rows)).OrderBy(c => maps.FieldOf(t, c) is null ? 1 : 0).ToList();

    /// <summary>The column of another table that a column points to, or null. Where only a part of the values is there, that is noted for a question.</summary>
    /// <param name="t">The column's table.</param>
    /// <param name="column">The column.</param>
    /// <param name="other">The other table.</param>
    /// <param name="may">Whether a column of the other table comes into question.</param>
    public ColumnSample? KeyOf(int t, ColumnSample column, int other, Func<ColumnSample, bool> may)
    {
        if (LinkSaid(t, column) is { } said)
        {
            return Keys(other).FirstOrDefault(k => PossibleLink.ChoiceOf(maps.Tables[other], k) == said && may(k));
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
        if (partly is not null && !(maps.FieldOf(t, column) is { } field && maps[other] is not null && maps.Column(other, field) == partly))
        {
            _possible.Add(new PossibleLink(maps.Tables[t], column, maps.Tables[other], partly, ShareIn(column, partly)));
        }

        return null;
    }

    // What is answered for one year of a log holds for all.
    private string? LinkSaid(int t, ColumnSample column) => maps.Tables
        .Where(o => o == maps.Tables[t] || ShopRelations.IsTwin(o.Sample, maps.Sample(t)))
        .Select(o => answers.Link(ReadingAnswers.KeyOf(o.Sample), column.Name)).FirstOrDefault(a => a is not null);

    /// <summary>True when nearly all values of a column stand in another.</summary>
    public static bool Points(ColumnSample column, ColumnSample key) => ShareIn(column, key) >= Covered;

    private static double ShareIn(ColumnSample column, ColumnSample key) => column.Values.Count >= FewestValues ? column.Values.ShareIn(key.Values) : 0;

    // Small plain numbers are found everywhere: there the headers must agree too, or the numbers must be so far apart that
    // dozens of them do not meet those of another table by chance.
    private bool IsNamed(ColumnSample column, ColumnSample key, int home)
    {
        if ((!column.IsNumbers && column.Values.Count >= 4) || (column.Values.Count >= EnoughNumbers && AreFarApart(key)))
        {
            return true;
        }

        string[] own = [.. PlainHeader.Words(column.Name).Where(w => w.Length >= 3)];
        string stem = Path.GetFileNameWithoutExtension(maps.Sample(home).Sheet ?? maps.Sample(home).File);
        string[] theirs = [.. PlainHeader.Words(key.Name).Concat(PlainHeader.Words(stem)).Concat(ListsNamed(column, key, home).SelectMany(PlainHeader.Words)).Where(w => w.Length >= 3 && !IsGeneral(w))];
        return Array.Exists(own, o => !IsGeneral(o) && Array.Exists(theirs, w => w.StartsWith(o[..Math.Min(o.Length, 4)], StringComparison.Ordinal)));
    }

    // One list of codes for several columns says in a column of its own which one each row is for.
    private IEnumerable<string> ListsNamed(ColumnSample column, ColumnSample key, int home)
    {
        HashSet<string> codes = new(column.Texts, StringComparer.OrdinalIgnoreCase);
        int[] rows = [.. Enumerable.Range(0, key.Cells.Length).Where(i => codes.Contains(key.Cells[i]))];
        return rows.Length < FewestValues ? [] : maps.Sample(home).Columns
            .Where(c => c != key && c.Distinct > 1 && c.Distinct * 2 <= c.Filled)
            .Select(c => rows.Select(i => c.Cells[i]).Distinct(StringComparer.OrdinalIgnoreCase).ToArray())
            .Where(names => names.Length == 1)
            .Select(names => names[0]);
    }

    private static bool AreFarApart(ColumnSample key)
    {
        double[] numbers = [.. key.Numbers.OfType<double>()];
        return numbers.Length >= EnoughNumbers && key.Values.Count <= MostDense * (numbers.Max() - numbers.Min() + 1);
    }

    private static bool IsGeneral(string word) => word is "code" or "number" or "nummer" or "num" or "key" or "ref" or "reference" or "list" or "liste" or "table" or "the" or "data" or "export";

    // Numbers of the rows point to nothing, though other tables number their rows too.
    private static bool NumbersRows(ColumnSample column, long rows) => column.IsNumbers && column.Values.IsKey
        && column.Numbers.OfType<double>().ToArray() is { Length: > 1 } numbers && numbers[^1] <= rows && numbers.Zip(numbers.Skip(1)).All(n => n.First < n.Second);

    private IEnumerable<ColumnSample> Keys(int t) => maps.Sample(t).Columns.Where(c => c.Values.IsKey && !c.IsDates && !c.IsAmounts);
}
