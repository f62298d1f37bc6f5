namespace PartsSignal.Pipeline.Understanding;

/// <summary>
/// Which kind a table in doubt is taken for, by what it shares with tables that are surer: rows that name a job and a part
/// are part lines, pieces in columns beside a part number are counts, and a list that holds the job log's machines is a
/// register. The kind is still asked about.
/// </summary>
internal static class KindMends
{
    private const double Likely = 0.5;
    private const int NearlyAll = 90;
    private const int Half = 8;
    private const int Plainly = 10;
    private const int NineInTen = 12;
    private const int Three = 4;
    private const int Forty = 8;
    private static readonly string[] PartLines = ["job_parts"];
    private static readonly string[] Orders = ["part_orders"];
    private static readonly string[] OfOrders = ["supplier", "received_on"];
    private static readonly string[] Counts = ["van_counts"];
    private static readonly string[] OfParts = ["fitments", "part_aliases", "supersessions", "van_counts", "job_parts", "part_orders"];
    private static readonly string[] NotOfParts = ["jobs", "units", "models"];
    private static readonly string[] Register = ["units"];

    /// <summary>The kinds, with the likeliest of those that the relations allow in front.</summary>
    /// <param name="kinds">Chances, likeliest first.</param>
    /// <param name="at">Place of the table.</param>
    /// <param name="second">The tables of the shop.</param>
    public static (string Kind, double Chance)[] Of((string Kind, double Chance)[] kinds, int at, SecondLook second)
    {
        TableEvidence table = second.First.Shop.Tables[at];
        string[] preferred =
            table.Columns.Any(c => Level(c, "is_key") == 0 && Names(c, second, "jobs", "job_id")) && table.Columns.Any(c => Names(c, second, "parts", "part")) ? (AreBought(table) ? Orders : PartLines)
            : table.Columns.Any(c => Names(c, second, "parts", "part")) ? (AreCounts(table) ? Counts : kinds[0].Kind == KindModels.None ? OfParts : [])
            : kinds[0].Kind == KindModels.None && HoldsMachines(at, second) ? Register
            : [];
        return preferred.Length == 0 || preferred.Contains(kinds[0].Kind) ? kinds : [.. kinds.OrderByDescending(k => k.Kind == kinds.First(x => preferred.Contains(x.Kind)).Kind)];
    }

    /// <summary>Whether nearly all values of a column stand in the column of another table that likely gives the field.</summary>
    internal static bool Names(ColumnEvidence column, SecondLook second, string kind, string field) => column.Links.Any(l =>
        l.IsKey && l.Percent >= NearlyAll && Chance(second, l.Table, kind) >= Likely && second.First.Choice(l.Table, kind).ColumnOf(field) == l.Column);

    /// <summary>Whether nearly all values of a column name the rows of another table that is no job log, register or list of models.</summary>
    internal static bool NamesParts(ColumnEvidence column, SecondLook second) =>
        column.Links.Any(l => l.IsKey && l.Percent >= NearlyAll && NotOfParts.All(k => Chance(second, l.Table, k) < Likely));

    // Order lines name a supplier, or have a second date: the day the parts came.
    private static bool AreBought(TableEvidence table) =>
        table.Columns.Any(c => OfOrders.Any(f => FieldLevels.HeaderLevel(c, f) >= Plainly)) || table.Columns.Count(c => Level(c, "date") >= Half) >= 2;

    private static bool AreCounts(TableEvidence table) =>
        table.Columns.Count(c => Level(c, "number") >= NineInTen && Level(c, "whole") >= NineInTen && Level(c, "median") <= Three && Level(c, "largest") <= Forty) >= 2
        && !table.Columns.Any(c => Level(c, "two_decimals") >= Half || Level(c, "date") >= Half);

    private static bool HoldsMachines(int at, SecondLook second) => second.First.Shop.Tables.Index().Any(t => Chance(second, t.Index, "jobs") >= Likely
        && second.First.Choice(t.Index, "jobs").ColumnOf("serial") is var serial and >= 0 && t.Item.Columns[serial].Links.Any(l => l.Table == at && l.IsKey));

    private static double Chance(SecondLook second, int table, string kind) => second.Kinds[table][((IList<string>)KindModels.Names).IndexOf(kind)];

    private static int Level(ColumnEvidence column, string feature) => column.Levels[ColumnFeatures.Place(feature)];
}
