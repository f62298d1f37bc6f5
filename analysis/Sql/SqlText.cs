using System.Collections.Concurrent;
using System.Reflection;

namespace PartsSignal.Analysis.Sql;

/// <summary>The SQL files embedded in this assembly, by their path under <c>Sql/</c>.</summary>
public static class SqlText
{
    private const string Root = "Sql/";
    private static readonly Assembly Home = typeof(SqlText).Assembly;
    private static readonly ConcurrentDictionary<string, string> Texts = new(StringComparer.Ordinal);

    /// <summary>Text of one file, for example <c>marts/jobs.sql</c>.</summary>
    /// <exception cref="ArgumentException">No such file is embedded.</exception>
    public static string Read(string path) => Texts.GetOrAdd(path, static p =>
    {
        using Stream stream = Home.GetManifestResourceStream(Root + p)
            ?? throw new ArgumentException($"No embedded SQL file '{p}'.", nameof(path));
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    });

    /// <summary>
    /// Text of one file with its places filled in. Identifiers and file names cannot be parameters of a query, so a file
    /// writes such a place as a quoted identifier in braces: <c>"{table}"</c>.
    /// </summary>
    /// <param name="path">Path under <c>Sql/</c>.</param>
    /// <param name="places">Name of each place and the SQL that goes there, already quoted.</param>
    /// <exception cref="ArgumentException">The file has no such place, or one is left unfilled.</exception>
    public static string Fill(string path, params ReadOnlySpan<(string Name, string Sql)> places)
    {
        string text = Read(path);
        foreach ((string name, string sql) in places)
        {
            string place = "\"{" + name + "}\"";
            text = text.Contains(place, StringComparison.Ordinal)
                ? text.Replace(place, sql, StringComparison.Ordinal)
                : throw new ArgumentException($"{path} has no place {place}.", nameof(places));
        }

        return text.Contains("\"{", StringComparison.Ordinal) ? throw new ArgumentException($"A place of {path} is left unfilled.", nameof(places)) : text;
    }

    /// <summary>Text of one file, or null where there is none.</summary>
    public static string? TryRead(string path) => Exists(path) ? Read(path) : null;

    /// <summary>True when the file is embedded.</summary>
    public static bool Exists(string path) => Home.GetManifestResourceInfo(Root + path) is not null;

    /// <summary>Path of the one file of that name, whatever folder it is in.</summary>
    /// <exception cref="ArgumentException">There is none, or more than one.</exception>
    public static string PathOf(string fileName)
    {
        string[] found = [.. Home.GetManifestResourceNames().Where(n => n.StartsWith(Root, StringComparison.Ordinal) && n.EndsWith("/" + fileName, StringComparison.Ordinal))];
        return found.Length == 1 ? found[0][Root.Length..] : throw new ArgumentException($"{found.Length} embedded SQL files are named '{fileName}'.", nameof(fileName));
    }

    /// <summary>All paths below a folder, in ordinal order.</summary>
    public static IReadOnlyList<string> List(string folder) =>
        [.. Home.GetManifestResourceNames()
            .Where(n => n.StartsWith(Root + folder + "/", StringComparison.Ordinal))
            .Select(n => n[Root.Length..])
            .Order(StringComparer.Ordinal)];
}
