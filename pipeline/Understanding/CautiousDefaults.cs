using PartsSignal.Analysis.CrossReference;
using PartsSignal.Pipeline.Config;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>
/// What is read until somebody answers, where a column is in doubt. A wrong part number or name does more harm than a gap, so
/// phone numbers, notes and counts are not read as parts. In the job log of a shop whose other tables list its
/// parts, a column of part numbers or names must hold some of those.
/// </summary>
internal static class CautiousDefaults
{
    private const double AskedEssential = 0.08;
    private const double AskedOther = 0.45;
    private const double Some = 0.05;
    private const int OneInTwenty = 2;
    private const int Hardly = 4;
    private const int Half = 8;
    private const int Mostly = 10;
    private const int FourInFive = 11;
    private const int NineInTen = 12;
    private const int Wholly = 14;
    private static readonly string[] PartNumbers = ["part", "other_part", "old_part", "new_part", "alias"];
    private static readonly string[] Names = ["description"];
    private static readonly string[] OtherDays = ["~visited", "~invoiced", "~planned"];
    private static readonly string[] Numbered = ["part", "parts_list"];
    private static readonly string[] Households = ["serial", "customer_name", "address"];
    private static readonly string[] Codes = ["code", "digits", "marked_digits"];

    /// <summary>The reading, with columns left unread that only a person should give to a field; they are still asked about.</summary>
    /// <param name="at">Place of the table.</param>
    /// <param name="all">All tables of the shop.</param>
    /// <param name="evidence">Their evidence.</param>
    /// <param name="choose">Which column gives which field, by odds.</param>
    public static TableReading Of(int at, IReadOnlyList<TableReading> all, ShopEvidence evidence, Func<double[,], FieldChoice> choose)
    {
        TableReading reading = all[at];
        TableEvidence table = evidence.Tables[at];

        // The next best column for the field may be no better.
        while (reading.Choice is { } choice && reading.Doubts.Where(d => d.Chosen >= 0 && IsUnfit(d, at, reading, all, table)).ToList() is { Count: > 0 } unfit)
        {
            double[,] odds = (double[,])choice.Odds.Clone();
            foreach (ColumnDoubt doubt in unfit)
            {
                int field = ((IList<string>)choice.Fields).IndexOf(doubt.Field);
                double most = FieldCatalog.Telling(choice.Kind).Contains(doubt.Field) ? AskedEssential : AskedOther;
                odds[doubt.Chosen, field] = Math.Min(odds[doubt.Chosen, field], FieldChoice.LogOdds(most));
            }

            FieldChoice next = choose(odds);
            if (next.Columns.SequenceEqual(choice.Columns))
            {
                break;
            }

            reading = reading with { Choice = next, Doubts = [.. ColumnDoubt.Of(next, table)] };
        }

        return reading;
    }

    private static bool IsUnfit(ColumnDoubt doubt, int at, TableReading reading, IReadOnlyList<TableReading> all, TableEvidence table)
    {
        ColumnEvidence own = table.Columns[doubt.Chosen];
        ColumnSample column = reading.Table.Sample.Columns[doubt.Chosen];
        int words = Level(own, "words_component");
        return doubt.Field switch
        {
            _ when own.Links.Any(l => l.IsKey) => false,
            "part" or "other_part" when own.Links.Count == 0 && (IsText(column) || IsCount(own) || IsPhone(table, reading, doubt.Chosen)) => true,
            "part" when reading.Kind == "jobs" => IsForeign(column, at, all, PartNumbers),
            "description" when reading.Kind == "jobs" => words <= OneInTwenty || (words < Half && IsApart(table, reading, doubt.Chosen)) || (IsForeign(column, at, all, Names) && (words < Half || Known(at, all, Names).Any())),
            "description" when reading.Kind is "job_parts" or "part_orders" => Level(own, "filled") < FourInFive && (words <= OneInTwenty || (words < Half && IsApart(table, reading, doubt.Chosen))),
            // The day of a visit, a bill or a plan may not be the day the job ended.
            "closed_on" => OtherDays.Max(d => FieldLevels.HeaderLevel(own, d)) is var other && other >= Mostly && other > FieldLevels.HeaderLevel(own, "closed_on"),
            "parts_list" => words <= OneInTwenty && Codes.All(c => Level(own, c) <= OneInTwenty),

            // One piece is usual: a column of small numbers under a heading that says nothing of pieces may count anything.
            "quantity" when reading.Kind == "jobs" => FieldLevels.HeaderLevel(own, "quantity") < Hardly,

            // What a machine is stands in nearly every row; a note does not.
            "appliance_type" => CellDoubts.Are(table, doubt.Chosen, doubt.Field) && Level(own, "filled") < FourInFive,
            _ => false,
        };
    }

    // A name goes with its number: rows of the same number that say different things hold notes.
    private static bool IsApart(TableEvidence table, TableReading reading, int column) =>
        Numbered.Select(f => reading.Choice!.ColumnOf(f)).Any(c => c >= 0 && c != column && table.Columns[c].Determines[column] is > 0 and < Mostly);

    private static bool IsText(ColumnSample column) => column.Filled > 0 && column.Texts.Count(t => t.Contains(' ') && !t.Any(char.IsAsciiDigit)) * 2 >= column.Filled;

    private static bool IsCount(ColumnEvidence own) => Level(own, "number") >= NineInTen && Level(own, "to_forty") >= NineInTen;

    // Part numbers may be written like phone numbers. A phone number is nearly always another one, or goes with its household.
    private static bool IsPhone(TableEvidence table, TableReading reading, int column) =>
        FieldCatalog.Of(reading.Kind).Any(f => f.Personal) && Level(table.Columns[column], "phone") >= Half
        && (Level(table.Columns[column], "distinct") >= Half || Households.Select(h => reading.Choice!.ColumnOf(h)).Any(c => c >= 0 && c != column && table.Columns[c].Determines[column] >= Wholly));

    // Whether the shop's other tables tell of parts, and hold hardly one of the values, however it is written.
    private static bool IsForeign(ColumnSample column, int at, IReadOnlyList<TableReading> all, string[] fields)
    {
        ColumnSample[] known = [.. Known(at, all, fields)];
        if (!Known(at, all, PartNumbers).Concat(Known(at, all, Names)).Any() || known.Any(k => column.Values.ShareIn(k.Values) >= Some))
        {
            return false;
        }

        HashSet<string> listed = [.. known.SelectMany(k => k.Texts).Select(CompactKey.From)];
        HashSet<string> values = [.. column.Texts.Select(CompactKey.From)];
        return values.Count(listed.Contains) < Some * values.Count;
    }

    // Columns of the shop's other tables that are taken for one of the fields. Years of the log prove nothing of each other.
    private static IEnumerable<ColumnSample> Known(int at, IReadOnlyList<TableReading> all, string[] fields) =>
        all.Where((r, i) => i != at && r.Kind != "jobs" && r.Choice is not null).SelectMany(r => fields.Select(f => r.Choice!.ColumnOf(f)).Where(c => c >= 0).Select(c => r.Table.Sample.Columns[c]));

    private static int Level(ColumnEvidence column, string feature) => column.Levels[ColumnFeatures.Place(feature)];
}
