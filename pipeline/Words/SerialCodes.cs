using CsvHelper;
using PartsSignal.Analysis.CrossReference;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Words;

/// <summary>The shop's table of serial date codes, <c>serial-codes.csv</c> beside <c>shop.json</c>.</summary>
/// <param name="Rules">Its rules; none where there is no table.</param>
/// <param name="Fingerprint">Changes when the table changes.</param>
internal sealed record SerialCodes(SerialDateRules Rules, string Fingerprint)
{
    /// <summary>Name of the file.</summary>
    public const string FileName = "serial-codes.csv";

    private static readonly string[] Columns = ["brand", "pattern", "year_letters", "year_of_first", "cycle_years", "month_letters"];

    private const string WeeksColumn = "weeks";

    /// <summary>Last day a code may mean; which candidates came after the call is sorted out when the call is known.</summary>
    public static readonly DateOnly Horizon = new(2060, 12, 31);

    /// <summary>Reads the table.</summary>
    /// <exception cref="BadInputException">The table has faults; all are named.</exception>
    public static SerialCodes Load(string folder)
    {
        string path = Path.Combine(folder, FileName);
        return File.Exists(path) ? Parse(File.ReadAllText(path)) : new SerialCodes(SerialDateRules.None, "none");
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

        byte[] hash = System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(text));
        return new SerialCodes(new SerialDateRules(rules), Convert.ToHexStringLower(hash)[..16]);
    }
}
