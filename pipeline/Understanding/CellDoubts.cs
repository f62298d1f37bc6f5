namespace PartsSignal.Pipeline.Understanding;

/// <summary>
/// Columns whose cells do not bear out what their header says: an outcome none of whose words ends a job, a working time of
/// seven digits, an appliance type that says preventive or urgent. Cells weigh more than headers: a person is asked, and
/// where the cells are plainly something else, the column is not read.
/// </summary>
internal static class CellDoubts
{
    private static readonly string[] Others = ["words_worktype", "words_priority", "words_branch"];
    private static readonly string[] UsesParts = ["jobs", "job_parts", "part_orders", "van_counts"];
    private static readonly string[] Named = ["job_id", "order_id", "part", "other_part", "alias", "old_part", "new_part", "model", "serial", "error_code", "quantity", "van", "technician"];
    private const int OneInTwenty = 2;
    private const double Hardly = 0.08;
    private const double NotUnasked = 0.6;
    private const int ThreeInTen = 6;
    private const int Half = 8;
    private const int FourInFive = 11;
    private const int NineInTen = 12;
    private const int NinetyFive = 13;
    private const int NotAtAll = 2;
    private const int AFew = 4;
    private const int One = 2;
    private const int ThreeLetters = 4;
    private const int Eighty = 9;
    private const int Thousand = 13;

    /// <summary>Whether the cells speak against the field.</summary>
    /// <param name="table">The table.</param>
    /// <param name="column">Place of the column.</param>
    /// <param name="field">The field it would give.</param>
    public static bool Are(TableEvidence table, int column, string field)
    {
        ColumnEvidence own = table.Columns[column];
        int Level(string feature) => CellDoubts.Level(own, feature);

        // Codes may have their words in another table.
        bool isListed = own.Links.Any(l => l.IsKey);
        return field switch
        {
            // A list of codes may tell of the bill, not of the work: its words are looked at where the codes are.
            "outcome" => isListed ? Level("words_outcome") < Half : Level("words_outcome") <= OneInTwenty,
            "appliance_type" => !isListed && Level("words_appliance") <= OneInTwenty,
            "labour" => (Level("number") >= FourInFive && Level("median") >= Thousand) || (Level("number") < Half && Level("duration") < Half && Level("clock") < Half),
            "technician" => !isListed && Level("number") >= FourInFive && Level("to_ten") >= NineInTen && Level("values") <= AFew,
            "model" => (Level("number") >= FourInFive && Level("median") <= Eighty) || Level("top_value") >= NineInTen || Level("length") <= ThreeLetters,
            "serial" => Level("top_value") >= NineInTen || Level("guid") >= Half,
            "job_id" or "part" => Level("top_value") >= NineInTen,
            "quantity" => !own.CountsWorkToo && Level("number") >= Half && (Level("whole") < FourInFive || (Level("two_decimals") >= Half && (Level("whole") < NineInTen || Level("median") > AFew))),
            "price" or "unit_cost" => Level("number") >= Half && Level("largest") <= One,
            "opened_on" or "closed_on" or "ordered_on" or "received_on" => Level("date") < Half,
            _ => false,
        };
    }

    /// <summary>The highest chance that the cells of a column leave for a field; 1: they do not speak against it.</summary>
    /// <param name="table">The table.</param>
    /// <param name="column">Place of the column.</param>
    /// <param name="field">The field it would give.</param>
    /// <param name="kind">The kind of table.</param>
    public static double Most(TableEvidence table, int column, string field, string kind)
    {
        ColumnEvidence own = table.Columns[column];
        bool isOther = field is "appliance_type" or "component" && Others.Any(o => Level(own, o) >= Half);
        bool isPostcodes = own.IsPostcodes && (kind is "jobs" or "units") && !own.Links.Any(l => l.IsKey);
        if (Named.Contains(field) && (isPostcodes || (Level(own, "date") >= FourInFive && Level(own, "is_key") == 0)))
        {
            return Hardly;
        }

        return field switch
        {
            // Appliances show the same few codes again and again.
            "error_code" => Level(own, "filled") >= NineInTen && Level(own, "distinct") >= ThreeInTen ? Hardly : 1,
            "opened_on" or "closed_on" or "ordered_on" or "received_on" => Level(own, "date") <= OneInTwenty && Level(own, "number") < Half ? Hardly : 1,
            "parts_list" => Level(own, "number") >= FourInFive || SaysOfFaults(own) ? Hardly : 1,
            "visits" => Level(own, "two_decimals") >= Half || (Level(own, "number") >= Half && Level(own, "median") > AFew) ? Hardly : 1,
            "van" => Level(own, "words_component") >= ThreeInTen ? Hardly : 1,
            "supplier" => kind == "jobs" && Level(own, "words_component") >= ThreeInTen ? Hardly : 1,
            "from_van" => Level(own, "number") >= FourInFive && Level(own, "largest") > One ? Hardly : 1,
            "appliance_type" => isOther && Are(table, column, field) ? Hardly : 1,
            "component" => own.Links.Any(l => l.IsKey) || Level(own, "words_component") > OneInTwenty ? 1 : isOther ? Hardly : NotUnasked,
            "labour" => Are(table, column, field) ? Hardly : 1,
            "quantity" => Are(table, column, field) || AreRowNumbers(table, column) ? Hardly : 1,

            // A complaint is no customer's name, a count of pieces is no order number, and a line's own number is not its job's.
            "customer_name" => Level(own, "words_complaint") >= ThreeInTen ? Hardly : 1,
            "order_id" => Level(own, "number") >= NineInTen && Level(own, "to_forty") >= NineInTen && Level(own, "is_key") == 0 && !own.Links.Any(l => l.IsKey) ? Hardly : 1,
            "job_id" => kind == "job_parts" && AreLineNumbers(table, own) ? Hardly : 1,

            // Amounts are no part numbers, though a part number may have a point; and rows that use parts do not number them.
            "part" => (Level(own, "number") >= NineInTen && Level(own, "two_decimals") >= Half && Level(own, "median") < Thousand && own.Links.Count == 0)
                || (UsesParts.Contains(kind) && AreRowNumbers(table, column)) ? Hardly : 1,
            "model" => Level(own, "number") >= FourInFive && Are(table, column, field) ? Hardly : 1,
            _ => 1,
        };
    }

    /// <summary>Whether rows that each should name another thing name the same few: no register, no price list, no list of models.</summary>
    /// <param name="table">The table.</param>
    /// <param name="choice">Its columns, were it of the kind it is taken for.</param>
    public static bool AreRepeated(TableEvidence table, FieldChoice choice)
    {
        string? name = choice.Kind switch { "units" => "serial", "models" => "model", "parts" => "part", _ => null };
        int column = name is null ? -1 : choice.ColumnOf(name);
        return column >= 0 && Level(table.Columns[column], "distinct") < ThreeInTen;
    }

    // Remarks on a fault name parts now and then; a list of parts seldom names faults.
    private static bool SaysOfFaults(ColumnEvidence column) => Level(column, "words_complaint") >= ThreeInTen && Level(column, "words_complaint") > Level(column, "words_component");

    /// <summary>Whether most cells hold words for appliances.</summary>
    public static bool NamesAppliances(ColumnEvidence column) => Level(column, "words_appliance") >= Half && Level(column, "words_component") < Half;

    /// <summary>Whether three in ten cells or more hold words for components.</summary>
    public static bool NamesComponents(ColumnEvidence column) => Level(column, "words_component") >= ThreeInTen;

    /// <summary>Whether the cells only number the rows: whole numbers, each larger than the one above, none larger than the table is long.</summary>
    public static bool AreRowNumbers(TableEvidence table, int column)
    {
        ColumnEvidence own = table.Columns[column];
        return Level(own, "number") >= NineInTen && Level(own, "whole") >= NineInTen && Level(own, "rising") >= NinetyFive && Level(own, "is_key") > 0
            && Level(own, "largest") <= table.Levels[ShopRelations.LevelOfRows];
    }

    // Every row has a new, larger number, and another column holds numbers of rows in another table.
    private static bool AreLineNumbers(TableEvidence table, ColumnEvidence own) =>
        Level(own, "is_key") > 0 && Level(own, "number") >= NineInTen && Level(own, "rising") >= NinetyFive && !own.Links.Any(l => l.IsKey)
        && table.Columns.Any(c => c != own && Level(c, "is_key") == 0 && Level(c, "number") >= NineInTen && c.Links.Any(l => l.IsKey));

    /// <summary>Whether two columns tell nothing of each other, either way.</summary>
    public static bool AreUnrelated(TableEvidence table, int column, int other) =>
        table.Columns[column].Determines[other] is > 0 and <= NotAtAll && table.Columns[other].Determines[column] is > 0 and <= NotAtAll;

    private static int Level(ColumnEvidence column, string feature) => column.Levels[ColumnFeatures.Place(feature)];
}
