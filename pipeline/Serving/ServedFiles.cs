using System.Globalization;
using System.Net;
using Microsoft.AspNetCore.Http;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Serving;

/// <summary>The files a run wrote for people. A requested name is matched against a fixed list and is never used to build a path.</summary>
internal sealed class ServedFiles(OutputFolder output)
{
    private static readonly (string Name, string Kind)[] Files =
    [
        ("index.html", "text/html; charset=utf-8"),
        ("summary.txt", "text/plain; charset=utf-8"),
        ("tables.xlsx", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"),
    ];

    private const string BodyStart = "<body>";
    private const string Back = "<nav class=\"back\" aria-label=\"PartsSignal\"><a href=\"/results\">Back to the results</a></nav>";

    /// <summary>Months whose report was written, newest first.</summary>
    public IReadOnlyList<string> Months() => !Directory.Exists(output.Reports) ? [] :
        [.. Directory.EnumerateDirectories(output.Reports).Select(d => Path.GetFileName(d)!).Where(IsMonth).OrderDescending(StringComparer.Ordinal)];

    /// <summary>A file of one month, or of the list of months if the month is null.</summary>
    public IResult Report(string? month, string file)
    {
        (string Name, string Kind) known = Array.Find(Files, f => f.Name == file);
        if (known.Name is null || (month is not null && !IsMonth(month)))
        {
            return Results.NotFound();
        }

        return Send(month is null ? Path.Combine(output.Reports, known.Name) : Path.Combine(output.Reports, month, known.Name), known.Kind);
    }

    /// <summary>A file of one month, with a way back to the bench at the top of a page.</summary>
    /// <param name="month">The month.</param>
    /// <param name="file">The file.</param>
    /// <param name="old">What to tell when the figures end long ago, or null.</param>
    public IResult ReportOnBench(string month, string file, string? old)
    {
        if (file != Files[0].Name || !IsMonth(month))
        {
            return Report(month, file);
        }

        string path = Path.Combine(output.Reports, month, file);
        string top = BodyStart + Back + (old is null ? "" : $"<div class=\"back\"><p class=\"caution\" role=\"status\">{WebUtility.HtmlEncode(old)}</p></div>");
        return File.Exists(path) ? Results.Content(File.ReadAllText(path).Replace(BodyStart, top, StringComparison.Ordinal), Files[0].Kind) : Results.NotFound();
    }

    /// <summary>The phone page.</summary>
    public IResult PhonePage() => Send(output.LookupPage, Files[0].Kind);

    private static IResult Send(string path, string kind) => File.Exists(path) ? Results.File(Path.GetFullPath(path), kind) : Results.NotFound();

    private static bool IsMonth(string text) =>
        DateOnly.TryParseExact(text + "-01", "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _);
}
