using Microsoft.AspNetCore.Http;
using PartsSignal.Reports.Components;

namespace PartsSignal.Pipeline.Bench;

/// <summary>Style sheet and script of the bench, embedded in the program.</summary>
internal static class BenchAssets
{
    // The style sheet is that of reports and answers, followed by what only the bench has.
    private static readonly Dictionary<string, (Lazy<string> Text, string Kind)> Files = new(StringComparer.Ordinal)
    {
        ["/bench.css"] = (new(() => StyleSheet.With(Read("bench.css"))), "text/css; charset=utf-8"),
        ["/bench.js"] = (new(() => Read("bench.js")), "text/javascript; charset=utf-8"),
    };

    /// <summary>Their addresses.</summary>
    public static IEnumerable<string> Addresses => Files.Keys;

    /// <summary>True for the address of one of them.</summary>
    public static bool Has(PathString path) => Files.ContainsKey(path.Value ?? "");

    /// <summary>One of them.</summary>
    public static IResult Send(string address) => Results.Text(Files[address].Text.Value, Files[address].Kind);

    private static string Read(string name)
    {
        using var reader = new StreamReader(typeof(BenchAssets).Assembly.GetManifestResourceStream("Bench/" + name)!);
        return reader.ReadToEnd();
    }
}
