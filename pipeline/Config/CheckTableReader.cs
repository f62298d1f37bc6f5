using System.Globalization;
using CsvHelper;
using PartsSignal.Analysis.CheckOrder;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Config;

/// <summary>
/// Reads the tables of checks. A shop's own <c>checks.csv</c> or <c>check-openings.csv</c> beside its files takes the
/// place of the shipped one as a whole.
/// </summary>
internal static class CheckTableReader
{
    private const string CheckFile = "checks.csv";
    private const string OpeningFile = "check-openings.csv";
    private static readonly string[] CheckColumns =
        ["appliance_types", "complaints", "component", "check", "minutes", "tool", "good", "bad", "opening", "finds", "share", "first", "caution"];

    private static readonly string[] OpeningColumns = ["appliance_type", "opening", "minutes", "caution"];

    /// <summary>The tables of a shop.</summary>
    /// <param name="folder">Folder with the shop's files, or null for the shipped tables.</param>
    /// <exception cref="BadInputException">A table has faults; all are listed with their lines.</exception>
    public static CheckTable Load(string? folder)
    {
        var faults = new List<string>();
        IReadOnlyList<ComponentCheck> checks = Rows(Text(folder, CheckFile), CheckFile, CheckColumns, Check, faults);
        IReadOnlyList<OpeningWork> openings = Rows(Text(folder, OpeningFile), OpeningFile, OpeningColumns, Opening, faults);
        return faults.Count == 0 ? new CheckTable(checks, openings) : throw new BadInputException(faults);
    }

    private static string Text(string? folder, string file)
    {
        string? own = folder is null ? null : Path.Combine(folder, file);
        return own is not null && File.Exists(own) ? File.ReadAllText(own) : WordTable.ReadDefault(file);
    }

    private static List<T> Rows<T>(string text, string file, string[] columns, Func<CsvReader, Numbers, T> read, List<string> faults)
    {
        using var csv = CsvReader.FromText(text, new CsvReaderOptions { Separator = ',', TrimWhitespace = true, TrackLineNumbers = true });
        csv.ReadHeader();
        string[] lacking = [.. columns.Where(c => !csv.TryGetFieldIndex(c, out _))];
        faults.AddRange(lacking.Select(c => $"{file}: has no column '{c}'."));
        var rows = new List<T>();
        while (lacking.Length == 0 && csv.Read())
        {
            rows.Add(read(csv, new Numbers(csv, file, faults)));
        }

        return rows;
    }

    private static ComponentCheck Check(CsvReader csv, Numbers numbers) => new()
    {
        ApplianceTypes = List(csv.GetString("appliance_types")),
        Complaints = List(csv.GetString("complaints")),
        Component = csv.GetString("component"),
        What = csv.GetString("check"),
        Minutes = numbers.Between("minutes", 0, 240),
        Tool = csv.GetString("tool"),
        Good = csv.GetString("good"),
        Bad = csv.GetString("bad"),
        Opening = csv.GetString("opening") is { Length: > 0 } opening ? opening : null,
        Finds = numbers.Between("finds", 0.01, 1),
        Share = numbers.Between("share", 0.001, 1_000),
        First = csv.GetString("first") is "yes",
        Caution = csv.GetString("caution"),
    };

    private static OpeningWork Opening(CsvReader csv, Numbers numbers) =>
        new(csv.GetString("appliance_type"), csv.GetString("opening"), numbers.Between("minutes", 0, 240), csv.GetString("caution"));

    private static string[] List(string cell) =>
        cell is "" or "*" ? [] : cell.Split('|', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    private sealed record Numbers(CsvReader Csv, string File, List<string> Faults)
    {
        public double Between(string column, double least, double most)
        {
            string cell = Csv.GetString(column);
            if (double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && value >= least && value <= most)
            {
                return value;
            }

            Faults.Add(string.Create(CultureInfo.InvariantCulture, $"{File}: line {Csv.LineNumber}: {column} is '{cell}', it must be a number from {least} to {most}."));
            return most;
        }
    }
}
