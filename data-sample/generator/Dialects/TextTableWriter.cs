using System.Globalization;
using System.Text;
using PartsSignal.SampleShop.Chance;

namespace PartsSignal.SampleShop.Dialects;

/// <summary>Writes a table as a text file: title lines, header, rows, footer, in the office's encoding.</summary>
internal sealed class TextTableWriter(Dialect dialect, CellWriter cells, string shopName, Dice dice)
{
    /// <summary>Ending of a text file's name; tab-separated files get their own.</summary>
    public string Ending { get; } = dialect.Separator switch
    {
        '\t' => ".tsv",
        '|' => ".txt",
        _ => dice.Chance(0.85) ? ".csv" : ".txt",
    };

    public void Write(string path, TableDraft table)
    {
        using var writer = new StreamWriter(path, false, Encoding()) { NewLine = dialect.NewLine };
        foreach (string line in Title(dialect.TitleRows))
        {
            writer.WriteLine(line);
        }

        if (dialect.TitleRows > 0 && dialect.BlankAfterTitle)
        {
            writer.WriteLine();
        }

        string[] header = [.. table.Columns.Select(c => c.Header)];
        Line(writer, header);
        for (int row = 0; row < table.Rows; row++)
        {
            if (table.Banners.TryGetValue(row, out string? banner))
            {
                Line(writer, [banner]);
                Line(writer, header);
            }
            else if (dialect.RepeatHeaderEvery > 0 && row > 0 && row % dialect.RepeatHeaderEvery == 0)
            {
                Line(writer, header);
            }

            Line(writer, [.. table.Columns.Select(c => cells.Write(c.Cells[row]))]);
        }

        if (dialect.Footer != Footer.None && table.Columns.Count > 2)
        {
            Line(writer, dialect.Footer == Footer.Total ? [dialect.Language == "de" ? "Summe" : "Total", table.Rows.ToString(CultureInfo.InvariantCulture)] : [$"{shopName}, end of list"]);
        }
    }

    /// <summary>Lines above the header.</summary>
    public IEnumerable<string> Title(int count) =>
        new[] { $"{shopName} - list {dice.Between(1, 90).ToString(CultureInfo.InvariantCulture)}", "confidential, for office use", "all sites" }.Take(count);

    private Encoding Encoding() => dialect.Encoding switch
    {
        "utf-8" => new UTF8Encoding(false),
        "utf-8-bom" => new UTF8Encoding(true),
        "utf-16" => new UnicodeEncoding(false, true),
        _ => CodePagesEncodingProvider.Instance.GetEncoding(dialect.Language == "pl" || dialect.CellLanguage == "pl" ? 1250 : 1252)!,
    };

    private void Line(StreamWriter writer, string[] texts)
    {
        int count = texts.Length;
        while (dialect.TrimRowEnds && count > 1 && texts[count - 1].Length == 0)
        {
            count--;
        }

        for (int i = 0; i < count; i++)
        {
            if (i > 0)
            {
                writer.Write(dialect.Separator);
            }

            bool quote = dialect.QuoteAll || texts[i].AsSpan().IndexOfAny('"', '\n', '\r') >= 0 || texts[i].Contains(dialect.Separator, StringComparison.Ordinal);
            writer.Write(quote ? $"\"{texts[i].Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : texts[i]);
        }

        writer.WriteLine();
    }
}
