using System.Security.Cryptography;
using System.Text;
using CsvHelper;
using PartsSignal.Analysis.CrossReference;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Words;

/// <summary>
/// How serials tell the build date: the shop's table <c>serial-codes.csv</c> beside <c>shop.json</c>, and the rules learned
/// for brands that the table says nothing of.
/// </summary>
/// <param name="Rules">Rules of the table; none where there is no table.</param>
/// <param name="Fingerprint">Changes when any rule changes.</param>
internal sealed record SerialCodes(SerialDateRules Rules, string Fingerprint)
{
    /// <summary>No rules: every serial is silent.</summary>
    public static readonly SerialCodes None = new(SerialDateRules.None, "none");

    /// <summary>Name of the file.</summary>
    public const string FileName = "serial-codes.csv";

    private static readonly string[] Columns = ["brand", "pattern", "year_letters", "year_of_first", "cycle_years", "month_letters"];

    private const string WeeksColumn = "weeks";

    /// <summary>Last day a code may mean; which candidates came after the call is sorted out when the call is known.</summary>
    public static readonly DateOnly Horizon = new(2060, 12, 31);

    private SerialDateRules Learned { get; init; } = SerialDateRules.None;

    /// <summary>The same with learned rules, which are used where the table is silent.</summary>
    /// <param name="learned">The rules; those with faults are left out.</param>
    public SerialCodes With(IReadOnlyList<SerialDateRuleText> learned)
    {
        SerialDateRule[] rules = [.. learned.Select(t => SerialDateRule.Create(t, out _)).OfType<SerialDateRule>()];
        return rules.Length == 0 ? this : this with { Learned = new SerialDateRules(rules), Fingerprint = $"{Fingerprint} {Hash(string.Join('\n', learned))}" };
    }

    /// <summary>Reads one serial.</summary>
    /// <param name="brand">Brand as typed, or null if unknown.</param>
    /// <param name="serial">Serial as typed; empty: silent.</param>
    /// <param name="notAfter">No later build date is possible.</param>
    public SerialDateReading Read(string? brand, ReadOnlySpan<char> serial, DateOnly notAfter)
    {
        SerialDateReading given = Rules.Read(brand, serial, notAfter);
        if (given.Fault is not null || given.Candidates.Count > 0)
        {
            return given;
        }

        // A learned rule speaks for the serials that it dates; others are none of its business and break nothing.
        SerialDateReading learned = Learned.Read(brand, serial, notAfter);
        return learned.Fault is null ? learned : SerialDateReading.Silent;
    }

    /// <summary>Reads the table.</summary>
    /// <exception cref="BadInputException">The table has faults; all are named.</exception>
    public static SerialCodes Load(string folder)
    {
        string path = Path.Combine(folder, FileName);
        return File.Exists(path) ? Parse(File.ReadAllText(path)) : None;
    }

    /// <summary>Reads the text of a table.</summary>
    /// <exception cref="BadInputException">The table has faults; all are named.</exception>
    public static SerialCodes Parse(string text)
    {
        using var csv = CsvReader.FromText(text, new CsvReaderOptions { Separator = ',', TrimWhitespace = true });
        csv.ReadHeader();
        string[] lacking = [.. Columns.Where(c => !csv.TryGetFieldIndex(c, out _))];
        if (lacking.Length > 0)
        {
            throw new BadInputException([.. lacking.Select(c => $"{FileName}: has no column '{c}'. It needs {string.Join(", ", Columns)}.")]);
        }

        bool saysWeeks = csv.TryGetFieldIndex(WeeksColumn, out int weeks);
        var rules = new List<SerialDateRule>();
        var faults = new List<string>();
        int row = 1;
        while (csv.Read())
        {
            row++;
            string[] cells = [.. Columns.Select(c => csv.GetString(c))];
            SerialDateRule? rule = SerialDateRule.Create(new(cells[0], cells[1], cells[2], cells[3], cells[4], cells[5], saysWeeks ? csv.GetString(weeks) : null), out IReadOnlyList<string> found);
            faults.AddRange(found.Select(f => $"{FileName}, row {row}, {f}."));
            if (rule is not null)
            {
                rules.Add(rule);
            }
        }

        if (faults.Count > 0)
        {
            throw new BadInputException(faults);
        }

        return new SerialCodes(new SerialDateRules(rules), Hash(text));
    }

    private static string Hash(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)))[..16];
}
