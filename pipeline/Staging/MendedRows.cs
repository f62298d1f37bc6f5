using CsvHelper;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Rejects;

namespace PartsSignal.Pipeline.Staging;

/// <summary>Finds the refused rows that a mended file stands for: they count as replaced, no longer as refused.</summary>
internal static class MendedRows
{
    private const string LineColumn = "reject_line";
    private const string RawColumn = "reject_raw";

    /// <summary>The files with the lines of their refused rows that were mended.</summary>
    /// <param name="sources">All sources, mended files among them.</param>
    /// <param name="staged">What became of each.</param>
    public static IReadOnlyList<StagedFile> Mark(IReadOnlyList<SourceFile> sources, IReadOnlyList<StagedFile> staged)
    {
        Dictionary<string, InputFile> mended = sources.Where(s => s.Mends is not null).Select(s => s.File).DistinctBy(f => Path.GetFileName(f.Name)).ToDictionary(f => Path.GetFileName(f.Name), StringComparer.Ordinal);
        if (mended.Count == 0)
        {
            return staged;
        }

        Dictionary<int, string> names = sources.ToDictionary(s => s.Order, s => RejectFile.NameOf(s.OwnName));
        return [.. staged.Select(s => s.Rejected > 0 && names.TryGetValue(s.SourceOrder, out string? name) && mended.TryGetValue(name, out InputFile? file) ? s with { MendedLines = Lines(file.Path, s.RawRejects) } : s)];
    }

    // A newer export moves lines, so rows are told by what they said. Where that was removed for its age, the file is as it was.
    private static int[] Lines(string mendedFile, string? rawRejects)
    {
        (int? Line, string Raw)[] mended = [.. Rows(mendedFile)];
        if (rawRejects is null || !File.Exists(rawRejects))
        {
            return [.. mended.Select(m => m.Line).OfType<int>().Distinct()];
        }

        HashSet<string> raws = [.. mended.Select(m => m.Raw).Where(r => r.Length > 0)];
        return [.. Rows(rawRejects).Where(r => raws.Contains(r.Raw)).Select(r => r.Line).OfType<int>().Distinct()];
    }

    private static IEnumerable<(int? Line, string Raw)> Rows(string path)
    {
        using var csv = CsvReader.FromFile(path, new CsvReaderOptions { Separator = ',' });
        csv.ReadHeader();
        if (!csv.TryGetFieldIndex(LineColumn, out int line) || !csv.TryGetFieldIndex(RawColumn, out int raw))
        {
            yield break;
        }

        while (csv.Read())
        {
            yield return (int.TryParse(csv.GetString(line), System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out int number) ? number : null, csv.GetString(raw).Replace("\r", "", StringComparison.Ordinal).Trim());
        }
    }
}
