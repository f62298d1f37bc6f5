using PartsSignal.Pipeline.Words;
using PartsSignal.Reports.Phone;

namespace PartsSignal.Pipeline.Reporting;

/// <summary>The words that identify a complaint, for the phone page.</summary>
internal static class PhoneWords
{
    private const string File = "complaint-words.csv";

    /// <summary>The complaint kinds: the shop's own table first, then the shipped one.</summary>
    public static IReadOnlyList<LookupKind> Kinds(string input) =>
        [.. Table(input).GroupBy(p => p.Meaning).Select(g => new LookupKind(
            g.Key,
            g.Any(p => p.Types is null) ? [] : [.. g.SelectMany(p => p.Types!).Distinct().Order(StringComparer.Ordinal)],
            string.Join(' ', g.SelectMany(p => p.Stems).Concat(g.Key.Split('_')).Select(s => s.TrimEnd('*')).Distinct())))];

    /// <summary>The keyword rules, in table order.</summary>
    public static IReadOnlyList<LookupPhrase> Phrases(string input) =>
        [.. Table(input).Select(p => new LookupPhrase(p.Meaning, p.Types is null ? [] : [.. p.Types.Order(StringComparer.Ordinal)], p.Stems))];

    /// <summary>Everyday words, which fuzzy matching leaves alone.</summary>
    public static IReadOnlyList<string> Common() =>
        [.. WordTable.ReadDefault("common-words.txt").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)];

    /// <summary>Abbreviations and their full words.</summary>
    public static IReadOnlyDictionary<string, string> Short() => WordTable.ReadDefault("short-words.csv")
        .Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1).Select(l => l.Trim().Split(',')).ToDictionary(l => l[0], l => l[1], StringComparer.Ordinal);

    private static IReadOnlyList<KeywordRule> Table(string input)
    {
        string own = Path.Combine(input, File);
        return WordTable.Read(
            WordTable.ReadDefault(File), System.IO.File.Exists(own) ? System.IO.File.ReadAllText(own) : null, "complaint_kind", File);
    }
}
