using CsvHelper;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Rejects;

namespace PartsSignal.Pipeline.Bench;

/// <summary>A refused row, as a person mends it.</summary>
/// <param name="Index">Its place in the reject file, from 0.</param>
/// <param name="Line">Its line in the shop's file.</param>
/// <param name="FaultyColumn">Header of the faulty cell, or null if the whole row is at fault.</param>
/// <param name="Message">Why it was refused.</param>
/// <param name="Suggestion">What to do.</param>
/// <param name="Cells">Its cells.</param>
/// <param name="IsNotData">True for a title, a total or a repeated header, which is kept but needs no mending.</param>
/// <param name="Raw">The row as typed; empty for a customer who was forgotten.</param>
/// <param name="Key">Tells it from every other row, without holding what it says.</param>
internal sealed record RefusedRow(int Index, string Line, string? FaultyColumn, string Message, string Suggestion, IReadOnlyList<string> Cells, bool IsNotData, string Raw, string Key);

/// <summary>A reject file as a table to edit.</summary>
/// <param name="Header">The source's own columns.</param>
/// <param name="Rows">Its rows.</param>
internal sealed record RefusedRows(IReadOnlyList<string> Header, IReadOnlyList<RefusedRow> Rows)
{
    /// <summary>Most rows shown at once.</summary>
    public const int MostShown = 50;

    /// <summary>Name of a reject file for people: that of the shop's file, and what is special about its rows.</summary>
    public static string Title(string rejectFile)
    {
        string name = rejectFile[..^RejectFile.Ending.Length];
        const string Again = ".again", Unknown = ".unknown-jobs";
        return name.EndsWith(Unknown, StringComparison.Ordinal) ? name[..^Unknown.Length] + " (parts on jobs that are not in any job log)"
            : name.EndsWith(Again, StringComparison.Ordinal) ? name[..^Again.Length] + " (corrected rows that were refused again)"
            : name;
    }

    /// <summary>Reads a reject file.</summary>
    public static RefusedRows Read(string path)
    {
        using var csv = CsvReader.FromFile(path, new CsvReaderOptions { Separator = ',' });
        csv.ReadHeader();
        string[] all = [.. csv.Headers!];
        int width = all.Length - RejectFile.OwnColumns.Count;
        var rows = new List<RefusedRow>();
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        while (csv.Read())
        {
            string[] cells = [.. Enumerable.Range(0, all.Length).Select(csv.GetString)];
            string message = cells[width + 3];
            string? faulty = all.Take(width).Where(h => h.Length > 0 && message.Contains(h, StringComparison.Ordinal)).MaxBy(h => h.Length);
            int times = seen[cells[^1]] = seen.GetValueOrDefault(cells[^1]) + 1;
            rows.Add(new RefusedRow(rows.Count, cells[width], faulty, message, cells[width + 4], cells[..width], cells[width + 2] == ReasonCode.NotData, cells[^1], SettledRows.KeyOf(Path.GetFileName(path), cells[^1], times)));
        }

        return new RefusedRows(all[..width], rows);
    }

    /// <summary>
    /// Writes mended rows beside the shop's files, behind rows mended earlier. The shop's own file stays as it is.
    /// </summary>
    /// <param name="input">Folder of the shop's files.</param>
    /// <param name="rejectFile">Name of the reject file they come from.</param>
    /// <param name="rows">Cells of the mended rows, with the reject's own columns.</param>
    public void Mend(string input, string rejectFile, IEnumerable<(RefusedRow Row, IReadOnlyList<string> Cells)> rows)
    {
        string path = Path.Combine(input, RejectFile.MendedFolder, rejectFile);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        string text = File.Exists(path) ? File.ReadAllText(path) : Line([.. Header, .. RejectFile.OwnColumns]);
        text += string.Concat(rows.Select(r => Line([.. r.Cells, r.Row.Line, "", "", "", "", r.Row.Raw])));
        File.WriteAllText(path + ".part", text);
        File.Move(path + ".part", path, overwrite: true);
    }

    private static string Line(IEnumerable<string> cells) => string.Join(',', cells.Select(TablePrinter.CsvCell)) + "\n";
}
