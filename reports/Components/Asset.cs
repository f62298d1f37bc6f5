using System.Collections.Concurrent;

namespace PartsSignal.Reports.Components;

/// <summary>Files embedded in this assembly, by their path under <c>Assets/</c>.</summary>
internal static class Asset
{
    private static readonly ConcurrentDictionary<string, string> Texts = new(StringComparer.Ordinal);

    public static string Text(string path) => Texts.GetOrAdd(path, static p =>
    {
        using Stream stream = typeof(Asset).Assembly.GetManifestResourceStream("Assets/" + p)
            ?? throw new ArgumentException($"No embedded asset '{p}'.", nameof(path));
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    });
}
