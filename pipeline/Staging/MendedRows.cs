using System.Globalization;
using CsvHelper;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Rejects;

namespace PartsSignal.Pipeline.Staging;

/// <summary>Finds the refused rows that a mended file stands for: they count as replaced, no longer as refused.</summary>
internal static class MendedRows
{
    private static readonly string[] Endings = [".csv", ".tsv", ".txt"];

    /// <summary>The files with the lines of their refused rows that were mended.</summary>
    /// <param name="sources">All sources, mended files among them.</param>
    /// <param name="staged">What became of each.</param>
    public static IReadOnlyList<StagedFile> Mark(IReadOnlyList<SourceFile> sources, IReadOnlyList<StagedFile> staged)
    {
        // A mended file that could not be read stands for nothing.
        HashSet<int> refused = [.. staged.Where(s => s.Refused is not null).Select(s => s.SourceOrder)];
        Dictionary<string, InputFile> mended = sources.Where(s => s.Mends is not null && !refused.Contains(s.Order)).Select(s => s.File).DistinctBy(f => Path.GetFileName(f.Name)).ToDictionary(f => Path.GetFileName(f.Name), StringComparer.Ordinal);
        if (mended.Count == 0)
        {
            return staged;
        }

        Dictionary<int, string> names = sources.ToDictionary(s => s.Order, s => RejectFile.NameOf(s.OwnName));
        Dictionary<int, string> unknownJobs = sources.ToDictionary(s => s.Order, s => RejectFile.NameOfUnknownJobs(s.OwnName));
        return [.. staged.Select(s => s with
        {
            MendedLines = s.Rejected > 0 && Of(names, s) is { } rows ? Lines(rows.Path, s.RawRejects) : [],
            MendedPartLines = Of(unknownJobs, s) is { } parts ? [.. PartLines(parts.Path)] : [],
        })];

        InputFile? Of(Dictionary<int, string> namesOf, StagedFile file) => namesOf.TryGetValue(file.SourceOrder, out string? name) ? mended.GetValueOrDefault(name) : null;
    }

    /// <summary>Says which tables in the folder for mended files no source reads, or null if every one is read.</summary>
    /// <param name="folder">Folder of the shop's files.</param>
    /// <param name="sources">All sources, mended files among them.</param>
    /// <param name="limits">Limits of reading.</param>
    public static string? Unclaimed(string folder, IReadOnlyList<SourceFile> sources, ReadingLimits limits)
    {
        string mended = Path.Combine(folder, RejectFile.MendedFolder);
        HashSet<string> read = [.. sources.Select(s => s.File.Name)];
        string[] left = !Directory.Exists(mended) ? []
            : [.. new InputFiles(mended, limits).Find("*").Where(f => f.IsWorkbook || Endings.Contains(Path.GetExtension(f.Name), StringComparer.OrdinalIgnoreCase)).Select(f => $"{RejectFile.MendedFolder}/{f.Name}").Where(f => !read.Contains(f))];
        return left.Length switch
        {
            0 => null,
            1 => $"Not loaded, since no list in the rejects folder has its name: {left[0]}. Save it as CSV under the name of the list that its rows came from, or take it out of '{RejectFile.MendedFolder}'.",
            _ => $"Not loaded, since no lists in the rejects folder have their names: {string.Join(", ", left)}. Save each as CSV under the name of the list that its rows came from, or take it out of '{RejectFile.MendedFolder}'.",
        };
    }

    // Where the refused rows were removed for their age, the file is as it was, and so are its lines.
    private static int[] Lines(string mendedFile, string? rawRejects)
    {
        Row[] mended = [.. Rows(mendedFile).DistinctBy(m => (m.Line, m.Raw))];
        if (rawRejects is null || !File.Exists(rawRejects))
        {
            return [.. mended.Select(m => m.Line).Where(l => l > 0).Distinct()];
        }

        Row[] refused = [.. Rows(rawRejects)];
        HashSet<(int, string)> asTyped = [.. mended.Where(m => m.Raw.Length > 0).Select(m => (m.Line, m.Raw))];
        HashSet<int> lines = [.. refused.Where(r => asTyped.Contains((r.Line, r.Raw))).Select(r => r.Line)];
        ILookup<int, Row> byLine = mended.ToLookup(m => m.Line);
        return [.. lines.Concat(Moved(mended, refused, lines)).Concat(refused.Where(r => byLine[r.Line].Any(m => IsByLine(m, r))).Select(r => r.Line)).Distinct()];
    }

    // A newer export moves lines, so rows are told by what they said; of several that said the same, as many as were mended.
    private static IEnumerable<int> Moved(Row[] mended, Row[] refused, IReadOnlySet<int> known)
    {
        var left = mended.Where(m => m.Raw.Length > 0).CountBy(m => m.Raw, StringComparer.Ordinal).ToDictionary(StringComparer.Ordinal);
        foreach (Row row in refused.Where(r => known.Contains(r.Line)))
        {
            left[row.Raw]--;
        }

        foreach (Row row in refused.Where(r => !known.Contains(r.Line) && left.GetValueOrDefault(r.Raw) > 0))
        {
            left[row.Raw]--;
            yield return row.Line;
        }
    }

    // A mended file may not say how the row was typed, nor does the list of a forgotten customer's rows. Another row may stand
    // on the line by now: most cells of a row are right before it is mended.
    private static bool IsByLine(Row mended, Row refused) =>
        (mended.Raw.Length == 0 || refused.Raw.Length == 0)
        && (refused.Cells.All(c => c.Length == 0) || refused.Cells.Zip(mended.Cells).Count(c => c.First == c.Second) * 2 >= refused.Cells.Count);

    private static IEnumerable<MendedPartLine> PartLines(string path)
    {
        using var csv = CsvReader.FromFile(path, new CsvReaderOptions { Separator = ',' });
        csv.ReadHeader();
        int line = csv.TryGetFieldIndex(RejectFile.LineColumn, out int lineAt) ? lineAt : -1;
        int message = csv.TryGetFieldIndex(RejectFile.MessageColumn, out int messageAt) ? messageAt : -1;
        while (csv.Read())
        {
            int? number = line >= 0 && int.TryParse(csv.GetString(line), NumberStyles.None, CultureInfo.InvariantCulture, out int parsed) ? parsed : null;
            yield return new MendedPartLine(number, message < 0 ? "" : csv.GetString(message).Trim());
        }
    }

    private static IEnumerable<Row> Rows(string path)
    {
        using var csv = CsvReader.FromFile(path, new CsvReaderOptions { Separator = ',' });
        csv.ReadHeader();
        if (!csv.TryGetFieldIndex(RejectFile.LineColumn, out int line) || !csv.TryGetFieldIndex(RejectFile.RawColumn, out int raw))
        {
            yield break;
        }

        int reason = csv.TryGetFieldIndex(RejectFile.ReasonColumn, out int at) ? at : -1;
        int unknown = 0;
        while (csv.Read())
        {
            // A title or a total was never refused.
            if (reason < 0 || csv.GetString(reason) != ReasonCode.NotData)
            {
                int number = int.TryParse(csv.GetString(line), NumberStyles.None, CultureInfo.InvariantCulture, out int parsed) ? parsed : --unknown;
                yield return new Row(number, csv.GetString(raw).Replace("\r", "", StringComparison.Ordinal).Trim(), [.. Enumerable.Range(0, line).Select(csv.GetString)]);
            }
        }
    }

    /// <summary>A row of a reject file or of a mended one.</summary>
    /// <param name="Line">Its line in the shop's file; below zero, and no other row's, if it does not say.</param>
    /// <param name="Raw">The row as typed; empty if it does not say.</param>
    /// <param name="Cells">Its cells.</param>
    private sealed record Row(int Line, string Raw, IReadOnlyList<string> Cells);
}
