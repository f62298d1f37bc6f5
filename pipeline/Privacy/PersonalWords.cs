using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Privacy;

/// <summary>
/// Words that stand beside names, numbers and streets, by language, from <c>personal-words.csv</c>, and the words of the
/// program's own tables. All are folded.
/// </summary>
internal static class PersonalWords
{
    private const int ShortestTelling = 4;
    private static readonly List<(string Class, string Language, string[] Words)> Rows =
        [.. Lines("personal-words.csv").Select(c => (c[0], c[1], c[2].Split('|')))];

    /// <summary>Languages with a dictionary.</summary>
    public static IReadOnlyList<string> Languages { get; } = ["en", "de", "fr", "es", "nl", "it", "pl"];

    /// <summary>Articles, prepositions, pronouns and the like of all languages.</summary>
    public static HashSet<ulong> Function { get; } = Of("function");

    /// <summary>Forms of address.</summary>
    public static HashSet<ulong> Titles { get; } = Of("title");

    /// <summary>What is said before a name, of one to three words joined with blanks.</summary>
    public static HashSet<ulong> Ask { get; } = Of("ask");

    /// <summary>Who somebody is: tenant, neighbor, wife.</summary>
    public static HashSet<ulong> Roles { get; } = Of("role");

    /// <summary>What may stand before a name: call, tel, customer.</summary>
    public static HashSet<ulong> Call { get; } = [.. Of("call"), .. Roles];

    /// <summary>What stands before somebody's day of birth.</summary>
    public static HashSet<ulong> Birth { get; } = Of("birth");

    /// <summary>What stands before a verb in a past tense: has said, hat angerufen.</summary>
    public static HashSet<ulong> Auxiliary { get; } = Of("auxiliary");

    /// <summary>Street words that precede the name.</summary>
    public static HashSet<ulong> StreetBefore { get; } = Of("street_before");

    /// <summary>Ends of words that name a street.</summary>
    public static IReadOnlyList<string> StreetEnds { get; } = [.. Rows.Where(r => r.Class == "street_end").SelectMany(r => r.Words).Distinct(StringComparer.Ordinal)];

    /// <summary>Words by which a language is told.</summary>
    public static IReadOnlyDictionary<string, HashSet<ulong>> Telling { get; } = Languages.ToDictionary(l => l, l => Hashes(Rows.Where(r => r.Language == l && r.Class is "function" or "domain" && r.Language == l).SelectMany(r => r.Words)), StringComparer.Ordinal);

    /// <summary>Everyday words of the complaint reader.</summary>
    public static HashSet<ulong> Common { get; } = Hashes(WordTable.ReadDefault("common-words.txt").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    /// <summary>Words of the shipped tables, and the beginnings of words among them (<c>leak*</c>).</summary>
    public static (HashSet<ulong> Words, IReadOnlyList<string> Stems) Own { get; } = OwnWords();

    /// <summary>Words of the shipped tables by language.</summary>
    public static IReadOnlyDictionary<string, HashSet<ulong>> Trade { get; } = TradeWords();

    /// <summary>Those that only one language's tables have and English has not, by which a language is told too.</summary>
    public static IReadOnlyDictionary<string, HashSet<ulong>> TradeTelling { get; } = OneLanguage();

    /// <summary>All classes of all words.</summary>
    public static WordClassTable Classes { get; } = new(
    [
        (WordClass.Function, Function), (WordClass.Common, Common), (WordClass.Own, Own.Words), (WordClass.Title, Titles),
        (WordClass.Ask, Hashes(Rows.Where(r => r.Class == "ask").SelectMany(r => r.Words).Select(w => w.Split(' ')[0]))),
        (WordClass.Call, Call), (WordClass.Role, Roles), (WordClass.Says, Of("says")), (WordClass.Secret, Of("secret")), (WordClass.Entrance, Of("entrance")),
        (WordClass.StreetAfter, Of("street_after")), (WordClass.StreetBefore, StreetBefore), (WordClass.Digit, Of("digit")), (WordClass.Unit, Of("unit")), (WordClass.Everyday, Of("everyday")), (WordClass.Plate, Of("plate")),
    ]);

    private static Dictionary<string, HashSet<ulong>> OneLanguage()
    {
        WordList english = WordList.Get("en");
        var languages = Trade.SelectMany(t => t.Value).GroupBy(w => w).Where(g => g.Count() == 1).Select(g => g.Key).ToHashSet();
        return Trade.ToDictionary(t => t.Key, t => t.Value.Where(w => languages.Contains(w) && (t.Key == "en" || !english.Contains(w))).ToHashSet(), StringComparer.Ordinal);
    }

    private static Dictionary<string, HashSet<ulong>> TradeWords() => TradeRows()
        .GroupBy(c => c[^2], StringComparer.Ordinal)
        .ToDictionary(g => g.Key, g => Hashes(g.SelectMany(c => c[^1].Split('|')).SelectMany(w => Tokenizer.Folded(w, keepStars: true)).Where(w => w.Length >= ShortestTelling && w[^1] != '*')), StringComparer.Ordinal);

    private static IEnumerable<string[]> TradeRows() => new[] { "complaint-words.csv", "components.csv", "appliance-words.csv", "outcome-words.csv" }.SelectMany(Lines);

    private static (HashSet<ulong>, IReadOnlyList<string>) OwnWords()
    {
        string[] classes = ["complaint", "outcome", "component", "appliance", "worktype", "priority", "branch", "place"];
        List<string> all =
        [
            .. Rows.Where(r => r.Class is "domain" or "unit" or "shop" or "everyday").SelectMany(r => r.Words),
            .. Lines("content-words.csv").Where(c => classes.Contains(c[0])).SelectMany(c => c[2].Split('|')),
            .. TradeRows().Where(c => c[^2] == "en").SelectMany(c => c[^1].Split('|').Append(c[0].Replace('_', ' '))).SelectMany(p => Tokenizer.Split(p, keepStars: true)),
        ];
        return (Hashes(all.Where(w => w[^1] != '*')), [.. all.Where(w => w.Length > 4 && w[^1] == '*').Select(w => TextFold.Fold(w.AsSpan(0, w.Length - 1))).Distinct(StringComparer.Ordinal)]);
    }

    private static IEnumerable<string[]> Lines(string file) => WordTable.ReadDefault(file).Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Skip(1).Select(l => l.Split(','));

    private static HashSet<ulong> Of(string kind) => Hashes(Rows.Where(r => r.Class == kind).SelectMany(r => r.Words));

    private static HashSet<ulong> Hashes(IEnumerable<string> words) => [.. words.Select(w => WordList.Hash(TextFold.Fold(w)))];
}
