using PartsSignal.Analysis.Vocabulary;
using PartsSignal.Pipeline.Words;
using PartsSignal.Reports.Phone;

namespace PartsSignal.Pipeline.Reporting;

/// <summary>The words that identify a complaint, for the phone page.</summary>
internal static class PhoneWords
{
    /// <summary>The complaint kinds, in the order of the rules.</summary>
    public static IReadOnlyList<LookupKind> Kinds(IReadOnlyList<KeywordRule> rules) =>
        [.. rules.Where(p => p.Meaning != Need.OtherComplaint).GroupBy(p => p.Meaning).Select(g => new LookupKind(
            g.Key,
            g.Any(p => p.Types is null) ? [] : [.. g.SelectMany(p => p.Types!).Distinct().Order(StringComparer.Ordinal)],
            string.Join(' ', g.SelectMany(p => p.Stems).Concat(g.Key.Split('_')).Select(s => s.TrimEnd('*')).Distinct())))];

    /// <summary>The keyword rules, in table order.</summary>
    public static IReadOnlyList<LookupPhrase> Phrases(IReadOnlyList<KeywordRule> rules) =>
        [.. rules.Select(p => new LookupPhrase(p.Meaning, p.Types is null ? [] : [.. p.Types.Order(StringComparer.Ordinal)], p.Stems))];

    /// <summary>Words that deny what stands beside them.</summary>
    /// <param name="languages">The shop's languages, or null for all.</param>
    public static LookupNegations Negations(IReadOnlyList<string>? languages)
    {
        var words = Words.Negations.For(languages);
        return new LookupNegations(Sorted(words.Before), Sorted(words.Between), Sorted(words.After));
    }

    /// <summary>Everyday words, which fuzzy matching leaves alone.</summary>
    public static IReadOnlyList<string> Common() =>
        [.. WordTable.ReadDefault("common-words.txt").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)];

    /// <summary>Abbreviations and their full words.</summary>
    public static IReadOnlyDictionary<string, string> Short() => WordTable.ReadDefault("short-words.csv")
        .Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1).Select(l => l.Trim().Split(',')).ToDictionary(l => l[0], l => l[1], StringComparer.Ordinal);

    private static IReadOnlyList<string> Sorted(IEnumerable<string> words) => [.. words.Order(StringComparer.Ordinal)];
}
