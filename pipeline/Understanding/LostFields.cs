using PartsSignal.Pipeline.Config;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>
/// Columns that could give a field on which answers hang, where the weights see none: by their cells alone, since a header
/// may be abbreviated beyond reading. They are only asked about, never taken.
/// </summary>
internal static class LostFields
{
    private const int Plainly = 10;
    private const int Fits = 11;
    private const int OneInFive = 5;
    private const int OneInTen = 4;
    private const int OneInTwenty = 3;
    private const int Few = 8;
    private const int NineInTen = 12;
    private const int Three = 4;
    private const int Forty = 8;

    // The fields to ask for, each with the fields that make it unnecessary.
    private static readonly Dictionary<string, (string Field, string[] Instead)[]> Fields = new(StringComparer.Ordinal)
    {
        ["jobs"] = [("closed_on", []), ("outcome", []), ("part", ["description", "parts_list"])],
        ["job_parts"] = [("part", []), ("quantity", [])],
        ["part_orders"] = [("order_id", []), ("ordered_on", []), ("received_on", []), ("part", ["other_part"]), ("quantity", [])],
        ["units"] = [("made_on", ["installed_on"]), ("serial", [])],
        ["parts"] = [("part", [])],
        ["van_counts"] = [("part", [])],
    };

    // Any other day of a job may be its closing day: the visit may have finished it, or the bill followed at once.
    private static readonly string[] LastDays = ["~visited", "~invoiced"];

    /// <summary>The columns, likeliest first.</summary>
    /// <param name="table">The table.</param>
    /// <param name="choice">Which column gives which field; none gives this one.</param>
    /// <param name="field">Place of the field.</param>
    public static IEnumerable<int> Candidates(TableEvidence table, FieldChoice choice, int field)
    {
        string name = choice.Fields[field];
        return Fields.GetValueOrDefault(choice.Kind, []).Any(f => f.Field == name && !f.Instead.Any(i => choice.ColumnOf(i) >= 0))
            ? Enumerable.Range(0, table.Columns.Count).Where(c => !choice.Columns.Contains(c) && table.Columns[c].IsFilled && IsPossible(table, choice, c, name)).OrderByDescending(c => choice.Odds[c, field]).ThenBy(c => c)
            : [];
    }

    private static bool IsPossible(TableEvidence table, FieldChoice choice, int column, string field)
    {
        ColumnEvidence own = table.Columns[column];
        int Level(string feature) => own.Levels[ColumnFeatures.Place(feature)];
        if (Level("filled") < OneInTen || (Level("top_value") >= Fits && field != "quantity") || (field != "quantity" && NamesOther(own, choice, field)))
        {
            return false;
        }

        return field switch
        {
            "outcome" => Level("words_outcome") >= OneInFive && Level("values") <= Few,
            "part" or "order_id" or "serial" => (own.Fits[(int)ContentClass.Code] >= Fits || own.Links.Any(l => l.IsKey)) && Level("two_decimals") < OneInTen && Level("distinct") >= OneInTwenty && Level("stamp") + Level("guid") + Level("phone") == 0 && !CellDoubts.AreRowNumbers(table, column),
            "quantity" => Level("number") >= NineInTen && Level("whole") >= NineInTen && Level("median") <= Three && Level("largest") <= Forty && !CellDoubts.AreRowNumbers(table, column),
            "made_on" => own.Fits[(int)ContentClass.Year] >= Fits && Level("stamp") == 0,
            _ => own.Fits[(int)ContentClass.Date] >= Fits && Level("stamp") == 0,
        };
    }

    // A header that plainly names something else is believed here, but a column of small counts is one whatever its header,
    // and codes headed "name" name whatever the table is of.
    private static bool NamesOther(ColumnEvidence column, FieldChoice choice, string field)
    {
        if (field == "part" && HeaderTokens.SaysOnly(column.Header, "name"))
        {
            return false;
        }

        IReadOnlyList<string> names = HeaderLexicon.Shipped.Fields;
        return names.Any(n => n != field && (n[0] == '~' || choice.Fields.Contains(n)) && !(field == "closed_on" && LastDays.Contains(n)) && FieldLevels.HeaderLevel(column, n) is >= Plainly and var other && other > FieldLevels.HeaderLevel(column, field));
    }
}
