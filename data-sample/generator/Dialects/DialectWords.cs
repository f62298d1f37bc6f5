using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Dialects;

/// <summary>The committed word tables that dialects draw from: headers, outcomes, trades, names.</summary>
internal static class DialectWords
{
    /// <summary>Languages in the order of the columns of the header table.</summary>
    public static readonly IReadOnlyList<string> Languages = ["en", "de", "fr", "es", "nl", "it", "pl"];

    private static readonly Dictionary<string, Dictionary<string, string[]>> Headers = ByLanguage("dialect-headers", "concept");
    private static readonly Dictionary<string, Dictionary<string, string[]>> Files = ByLanguage("dialect-files", "table");

    /// <summary>What each concept of a shop's tables means to the store.</summary>
    public static IReadOnlyDictionary<string, ConceptRule> Concepts { get; } = ReadConcepts();

    /// <summary>Columns that no table of the store has a field for.</summary>
    public static IReadOnlyList<JunkRule> Junk { get; } = ReadJunk();

    /// <summary>Makers and number shapes of each trade.</summary>
    public static IReadOnlyList<TradeRule> Trades { get; } = ReadTrades();

    /// <summary>What fails on which machine, and how customers say it.</summary>
    public static IReadOnlyList<FaultRule> Faults { get; } = ReadFaults();

    /// <summary>Tables that are none of the store's, such as payroll.</summary>
    public static IReadOnlyList<OtherRule> Others { get; } =
        [.. Rows("dialect-others").Select(r => new OtherRule(r("table"), Split(r("kind_ok")), [.. r("columns").Split('|').Select(c => c.Split(':', 2)).Select(c => (c[0], c[1]))]))];

    private static IReadOnlyDictionary<(string, string), string[]> Outcomes { get; } =
        Rows("dialect-outcomes").ToDictionary(r => (r("language"), r("meaning")), r => r("words").Split('|'));

    private static ILookup<string, string> Names { get; } = Rows("dialect-names").ToLookup(r => r("kind"), r => r("text"));

    public static string[] HeadersFor(string concept, string language) => Headers[concept][language];

    public static string[] FileNames(string table, string language) => Files[table][language];

    public static string[] OutcomeWords(string meaning, string language) => Outcomes[(language, meaning)];

    public static string[] NamesOf(string kind) => [.. Names[kind]];

    private static IReadOnlyDictionary<string, ConceptRule> ReadConcepts() =>
        Rows("dialect-concepts").ToDictionary(
            r => r("concept"),
            r => new ConceptRule(Split(r("fields")), Split(r("never")), double.Parse(r("present"), System.Globalization.CultureInfo.InvariantCulture)));

    private static IReadOnlyList<JunkRule> ReadJunk() =>
        [.. Rows("dialect-junk").Select(r => new JunkRule(r("concept"), r("form"), r("values").Split('|'), Split(r("never"))))];

    private static IReadOnlyList<TradeRule> ReadTrades() =>
        [.. Rows("dialect-trades").Select(r => new TradeRule(
            r("trade"),
            Split(r("brands")),
            Split(r("model_shapes")),
            Split(r("part_shapes")),
            Split(r("serial_shapes")),
            double.Parse(r("price"), System.Globalization.CultureInfo.InvariantCulture)))];

    private static IReadOnlyList<FaultRule> ReadFaults() =>
        [.. Rows("dialect-faults").Select(r => new FaultRule(r("trade"), r("language"), r("type"), r("component"), Split(r("complaints"))))];

    private static Dictionary<string, Dictionary<string, string[]>> ByLanguage(string table, string key) =>
        Rows(table).ToDictionary(r => r(key), r => Languages.ToDictionary(l => l, l => Split(r(l))));

    private static IEnumerable<Func<string, string>> Rows(string name)
    {
        DataTable table = DataTable.Read(name);
        return table.Rows.Select(row => (Func<string, string>)(column => table.Text(row, column)));
    }

    private static string[] Split(string cell) => cell.Split('|', StringSplitOptions.RemoveEmptyEntries);
}

/// <param name="Fields">Store fields a column of this concept may fill; one that begins with + has no place in the store.</param>
/// <param name="Never">Store fields it must never fill.</param>
/// <param name="Present">How often a shop keeps it.</param>
internal sealed record ConceptRule(string[] Fields, string[] Never, double Present);

/// <summary>A column the store has no use for: how its cells are made, and the fields it must never fill.</summary>
internal sealed record JunkRule(string Concept, string Form, string[] Values, string[] Never);

/// <summary>Invented makers and the shapes of their numbers: A is a letter, 9 a digit, YY and WW are dates in serials.</summary>
internal sealed record TradeRule(string Name, string[] Brands, string[] ModelShapes, string[] PartShapes, string[] SerialShapes, double TypicalPrice);

/// <summary>One component's failure in the words of one language.</summary>
internal sealed record FaultRule(string Trade, string Language, string Type, string Component, string[] Complaints);

/// <summary>A table that no kind of the store holds, and the kinds that would do no harm; columns as concept and form.</summary>
internal sealed record OtherRule(string Table, string[] KindsAlsoRight, (string Concept, string Form)[] Columns);
