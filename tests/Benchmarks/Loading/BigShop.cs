using System.Globalization;
using System.Text;
using CsvHelper;

namespace PartsSignal.Benchmarks.Loading;

/// <summary>The sample shop's files with one job log blown up: its rows again and again, each a job, a day, a caller and an appliance of its own.</summary>
internal static class BigShop
{
    private const string Log = "jobs-2023.csv";
    private static readonly DateOnly First = new(2021, 1, 1);
    private static readonly DateOnly Last = new(2026, 9, 30);

    /// <summary>Copies the sample to a folder, with the log of that many rows in place of the small one.</summary>
    public static void Write(string folder, int rows)
    {
        foreach (string file in Directory.EnumerateFiles(SampleFolder()))
        {
            File.Copy(file, Path.Combine(folder, Path.GetFileName(file)), overwrite: true);
        }

        string path = Path.Combine(folder, Log);
        List<string[]> small = Read(path);
        using var big = new StreamWriter(path, append: false, new UTF8Encoding(false), 1 << 20);
        big.WriteLine(string.Join(',', small[0]));
        Columns at = new(small[0]);
        int days = Last.DayNumber - First.DayNumber;
        for (int i = 0; i < rows; i++)
        {
            string[] cells = [.. small[1 + (i % (small.Count - 1))]];
            DateOnly opened = First.AddDays((int)((long)days * i / rows));
            int took = Math.Max(0, Day(cells[at.Finished]) - Day(cells[at.Opened]));
            string closed = cells[at.Finished].Length == 0 ? "" : Text(opened.AddDays(Math.Min(took, 60)));
            (cells[at.Ref], cells[at.Opened], cells[at.Finished], cells[at.Changed]) = (Number("N", i), Text(opened), closed, closed.Length == 0 ? Text(opened) : closed);
            cells[at.Phone] = Number("07", (int)(i * 2_654_435_761L % 100_000_000));
            cells[at.Serial] = Redrawn(cells[at.Serial], i);
            cells[at.Address] = $"{i % 197} {cells[at.Address]}";
            big.WriteLine(string.Join(',', cells.Select(Quoted)));
        }
    }

    // Same form, other digits at the end: the serial rules go on reading its date code.
    private static string Redrawn(string serial, int i)
    {
        char[] letters = serial.ToCharArray();
        int rest = i;
        for (int k = letters.Length - 1; k >= letters.Length - 5 && k >= 0 && char.IsAsciiDigit(letters[k]); k--)
        {
            letters[k] = (char)('0' + (rest % 10));
            rest /= 10;
        }

        return new string(letters);
    }

    private static string SampleFolder()
    {
        DirectoryInfo? at = new(AppContext.BaseDirectory);
        while (at is not null && !File.Exists(Path.Combine(at.FullName, "PartsSignal.sln")))
        {
            at = at.Parent;
        }

        return Path.Combine(at?.FullName ?? throw new InvalidOperationException("The benchmarks run from within a checkout."), "data-sample");
    }

    private static List<string[]> Read(string path)
    {
        using var csv = CsvReader.FromFile(path, new CsvReaderOptions { HasHeader = false, Separator = ',' });
        var rows = new List<string[]>();
        while (csv.Read())
        {
            rows.Add([.. Enumerable.Range(0, csv.FieldCount).Select(csv.GetString)]);
        }

        return [.. rows.Where(r => r.Length == rows[0].Length)];
    }

    private static string Quoted(string cell) => cell.AsSpan().IndexOfAny(',', '"') < 0 ? cell : "\"" + cell.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"";

    private static string Number(string before, int i) => string.Create(CultureInfo.InvariantCulture, $"{before}{i:00000000}");

    private static string Text(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static int Day(string text) => DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) ? day.DayNumber : 0;

    private sealed class Columns(string[] header)
    {
        public int Ref => At("Ref");

        public int Opened => At("Opened");

        public int Finished => At("Finished");

        public int Changed => At("Last change");

        public int Phone => At("Client phone");

        public int Address => At("Client address");

        public int Serial => At("Serial no");

        private int At(string name) => Array.FindIndex(header, h => h.Trim('\uFEFF') == name);
    }
}
