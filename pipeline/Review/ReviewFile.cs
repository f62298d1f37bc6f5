using System.Text;
using CsvHelper;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Review;

/// <summary>One row of a review list: its cells by column, and the owner's answer.</summary>
/// <param name="File">Its file, relative to the input folder.</param>
/// <param name="Line">Row in that file; the header is row 1.</param>
/// <param name="Cells">Cells by column.</param>
internal sealed record ReviewRow(string File, int Line, IReadOnlyDictionary<string, string> Cells)
{
    /// <summary>A cell, empty if the column is missing.</summary>
    public string this[string column] => Cells.GetValueOrDefault(column, "");

    /// <summary>The trimmed answer, empty if not answered.</summary>
    public string Answer => this[ReviewFile.AnswerColumn].Trim();
}

/// <summary>Reads and writes review lists: plain CSV whose last column, <c>answer</c>, the owner fills in.</summary>
internal static class ReviewFile
{
    /// <summary>Name of the column to fill in.</summary>
    public const string AnswerColumn = "answer";

    /// <summary>Name of the column that says why an answer could not be used.</summary>
    public const string NoteColumn = "note";

    /// <summary>
    /// Rows of a list next to the shop's files or in their folder <c>review</c>; empty if there is no such file.
    /// </summary>
    /// <exception cref="BadInputException">The file has no column <c>answer</c>.</exception>
    public static IReadOnlyList<ReviewRow> Read(string input, string name)
    {
        string[] places = [name, Path.Combine("review", name)];
        return [.. places.Where(p => File.Exists(Path.Combine(input, p))).SelectMany(p => Parse(File.ReadAllText(Path.Combine(input, p)), p))];
    }

    /// <summary>Writes a list.</summary>
    public static void Write(string path, IReadOnlyList<string> columns, IEnumerable<IReadOnlyList<string?>> rows)
    {
        using var file = new StreamWriter(path, append: false, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true));
        file.Write(string.Join(',', columns.Select(TablePrinter.CsvCell)) + '\n');
        foreach (IReadOnlyList<string?> row in rows)
        {
            file.Write(string.Join(',', row.Select(TablePrinter.CsvCell)) + '\n');
        }
    }

    private static List<ReviewRow> Parse(string text, string name)
    {
        // spreadsheets save with semicolons in some locales
        string head = text.Split('\n')[0];
        char separator = head.Count(c => c == ';') > head.Count(c => c == ',') ? ';' : ',';
        using var csv = CsvReader.FromText(text, new CsvReaderOptions { Separator = separator, TrimWhitespace = true });
        csv.ReadHeader();
        string[] columns = [.. head.TrimStart('\uFEFF').TrimEnd('\r').Split(separator).Select(c => c.Trim().Trim('"'))];
        if (!columns.Contains(AnswerColumn, StringComparer.Ordinal))
        {
            throw new BadInputException($"{name}: has no column '{AnswerColumn}'. Keep the columns of the list as they were written.");
        }

        var rows = new List<ReviewRow>();
        int line = 1;
        while (csv.Read())
        {
            line++;
            var cells = new Dictionary<string, string>(StringComparer.Ordinal);
            for (int i = 0; i < columns.Length; i++)
            {
                string cell = csv.GetString(i);
                cells[columns[i]] = cell.Length > 1 && cell[0] == '\'' && "=+-@\t".Contains(cell[1], StringComparison.Ordinal) ? cell[1..] : cell;
            }

            rows.Add(new ReviewRow(name, line, cells));
        }

        return rows;
    }
}
