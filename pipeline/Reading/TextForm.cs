using System.Text;

namespace PartsSignal.Pipeline.Reading;

/// <summary>How a text table is written.</summary>
/// <param name="Encoding">Encoding of the bytes.</param>
/// <param name="Separator">Between cells.</param>
/// <param name="HeaderLine">Line of the header from 1; 0: the table has none.</param>
/// <param name="Header">The header's cells; empty without one.</param>
internal sealed record TextForm(Encoding Encoding, char Separator, int HeaderLine, IReadOnlyList<string> Header)
{
    private const int SampleRows = 300;
    private static readonly (string Name, char Mark)[] Separators = [("comma", ','), ("semicolon", ';'), ("tab", '\t'), ("pipe", '|')];

    /// <summary>Names of the separators, as a map spells them.</summary>
    public static IReadOnlyList<string> SeparatorNames { get; } = [.. Separators.Select(s => s.Name)];

    /// <summary>Name of this separator.</summary>
    public string SeparatorName => Separators.First(s => s.Mark == Separator).Name;

    /// <summary>First rows, as cut with a separator.</summary>
    public static IReadOnlyList<SampleRow> Sample(byte[] utf8, char separator, ReadingLimits limits)
    {
        using var table = new CsvTable(new MemoryStream(utf8), separator, 1, brokenText: false, limits);
        return SampleRow.Take(table, SampleRows);
    }

    /// <summary>Decides separator and header from the start of the text, minding what the map says.</summary>
    /// <param name="start">First part of the file as UTF-8, cut after a line end.</param>
    /// <param name="encoding">The encoding of the file.</param>
    /// <param name="separator">Name of the separator; null: decide.</param>
    /// <param name="headerLine">Line of the header; null: decide.</param>
    /// <param name="wanted">Headers the map names.</param>
    /// <param name="limits">Limits of reading.</param>
    public static TextForm Decide(byte[] start, Encoding encoding, string? separator, int? headerLine, IReadOnlyCollection<string> wanted, ReadingLimits limits)
    {
        (string Name, char Mark)[] choices = separator is null ? Separators : [.. Separators.Where(s => s.Name == separator)];
        var tries = choices
            .Select(s => (s.Mark, Rows: Sample(start, s.Mark, limits)))
            .Select(t => (t.Mark, t.Rows, At: HeaderFinder.Find(t.Rows, wanted), Width: HeaderFinder.UsualWidth(t.Rows)))
            .ToList();
        var best = tries
            .OrderByDescending(t => t.At >= 0 ? HeaderFinder.Hits(t.Rows[t.At], wanted) : 0)
            .ThenByDescending(t => t.Width > 1 ? t.Rows.Count(r => r.Cells.Count == t.Width) : 0)
            .ThenByDescending(t => t.Width)
            .First();
        if (headerLine is { } line)
        {
            SampleRow? header = best.Rows.FirstOrDefault(r => r.Line == line);
            return new TextForm(encoding, best.Mark, line, header?.Cells ?? []);
        }

        return best.At < 0
            ? new TextForm(encoding, best.Mark, 0, [])
            : new TextForm(encoding, best.Mark, best.Rows[best.At].Line, best.Rows[best.At].Cells);
    }
}
