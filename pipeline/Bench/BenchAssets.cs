using Microsoft.AspNetCore.Http;

namespace PartsSignal.Pipeline.Bench;

/// <summary>Style sheet and script of the bench, embedded in the program.</summary>
internal static class BenchAssets
{
    private static readonly Dictionary<string, (string Resource, string Kind)> Files = new(StringComparer.Ordinal)
    {
        ["/bench.css"] = ("Bench/bench.css", "text/css; charset=utf-8"),
        ["/bench.js"] = ("Bench/bench.js", "text/javascript; charset=utf-8"),
    };

    /// <summary>Their addresses.</summary>
    public static IEnumerable<string> Addresses => Files.Keys;

    /// <summary>True for the address of one of them.</summary>
    public static bool Has(PathString path) => Files.ContainsKey(path.Value ?? "");

    /// <summary>One of them.</summary>
    public static IResult Send(string address)
    {
        (string resource, string kind) = Files[address];
        return Results.Stream(typeof(BenchAssets).Assembly.GetManifestResourceStream(resource)!, kind);
    }
}
