using PartsSignal.Pipeline.Words;
using PartsSignal.Reports.Phone;

namespace PartsSignal.Pipeline.Reporting;

/// <summary>The words a complaint is told by, for the phone page.</summary>
internal static class PhoneWords
{
    private const string File = "complaint-words.csv";

    /// <summary>The kinds, in the order of the shop's own table and then the shipped one.</summary>
    public static IReadOnlyList<LookupKind> Kinds(string input) =>
        [.. Table(input).GroupBy(p => p.Meaning).Select(g => new LookupKind(
            g.Key,
            g.Any(p => p.Types is null) ? [] : [.. g.SelectMany(p => p.Types!).Distinct().Order(StringComparer.Ordinal)],
            string.Join(' ', g.SelectMany(p => p.Stems).Concat(g.Key.Split('_')).Select(s => s.TrimEnd('*')).Distinct())))];

    /// <summary>The table itself.</summary>
    public static IReadOnlyList<LookupPhrase> Phrases(string input) =>
        [.. Table(input).Select(p => new LookupPhrase(p.Meaning, p.Types is null ? [] : [.. p.Types.Order(StringComparer.Ordinal)], p.Stems))];

    /// <summary>Words of everyday speech.</summary>
    public static IReadOnlyList<string> Common() =>
        [.. WordTable.ReadDefault("common-words.txt").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)];

    /// <summary>Shorthand.</summary>
    public static IReadOnlyDictionary<string, string> Short() => WordTable.ReadDefault("short-words.csv")
        .Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1).Select(l => l.Trim().Split(',')).ToDictionary(l => l[0], l => l[1], StringComparer.Ordinal);

    private static IReadOnlyList<KeywordRule> Table(string input)
    {
        string own = Path.Combine(input, File);
        return WordTable.Read(
            WordTable.ReadDefault(File), System.IO.File.Exists(own) ? System.IO.File.ReadAllText(own) : null, "complaint_kind", File);
    }
}
