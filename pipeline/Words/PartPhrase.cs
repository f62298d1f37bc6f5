using System.Text.RegularExpressions;

namespace PartsSignal.Pipeline.Words;

/// <summary>
/// The words of a part's description that say what it is: <c>Pump, drain 30 W with clamp</c> is a drain pump. Numbers,
/// sizes, sides and colors tell nothing; what follows <c>with</c> or <c>for</c> tells only what it goes with.
/// </summary>
internal sealed partial class PartPhrase
{
    private const int MostWords = 4;
    private const int ShortestWord = 3;
    private static readonly Dictionary<string, HashSet<string>> Classes = Read();
    private static readonly Dictionary<string, string> Short = Rows().Where(r => r.Class == "short").SelectMany(r => r.Words).Select(w => w.Split('=')).ToDictionary(w => w[0], w => w[1], StringComparer.Ordinal);

    /// <summary>Changes when the table changes.</summary>
    public static string Version => WordTable.ReadDefault("part-words.csv");

    // The words that have accents, by what they are without.
    private readonly Dictionary<string, string> _accented;

    private PartPhrase(string[] head, string[] all, bool isInverted, Dictionary<string, string> accented) =>
        (Head, All, IsInverted, _accented) = (head, all, isInverted, accented);

    /// <summary>Words up to the first that joins something else, without accents.</summary>
    public string[] Head { get; }

    /// <summary>All words, without accents.</summary>
    public string[] All { get; }

    /// <summary>True for <c>motor, drain</c>, which lists write for a drain motor.</summary>
    private bool IsInverted { get; }

    /// <summary>Words of the head that tell something.</summary>
    public IEnumerable<string> Telling => Head.Where(w => !IsPlain(w));

    /// <summary>True where the words name mounting hardware, covers or consumables: what goes with a repair.</summary>
    public bool IsAccessory => Telling.ToArray() is { Length: > 0 } words && (Classes["accessory"].Contains(words[^1]) || Classes["accessory"].Contains(words[0]));

    /// <summary>The words as a name, <c>drain_motor</c>, or null where they are none or too many for one.</summary>
    public string? Name => NameOf([.. Telling]);

    /// <summary>Some of the words that tell something, in their order, as a name with its accents; null where they are none or too many for one.</summary>
    public string? NameOf(string[] words) =>
        words.Length is 0 or > MostWords ? null : string.Join('_', (IsInverted ? [.. words[1..], words[0]] : words).Select(w => _accented.GetValueOrDefault(w, w)));

    /// <summary>Cuts a description into its words.</summary>
    public static PartPhrase Parse(string description)
    {
        // What was cut out of the text, such as [phone], is no word of the part.
        description = Rings().Replace(Marks().Replace(description, " "), "oring");
        int end = Cut(description);
        string[] all = [.. Tokenizer.Folded(description).Select(Long)];
        List<string> head = [.. Tokenizer.Folded(description.AsSpan(0, end)).Select(Long)];
        int joint = head.Count < 2 ? -1 : head.FindIndex(1, Classes["joint"].Contains);
        string[] kept = [.. joint < 0 ? head : head[..joint]];
        int comma = description.IndexOf(',', StringComparison.Ordinal);
        return new PartPhrase(kept, all, comma > 0 && Tokenizer.Split(description.AsSpan(0, comma)).Count == 1, Accented(description));
    }

    /// <summary>True for a word that says nothing about what a part is.</summary>
    public static bool IsPlain(string word) => word.Length < ShortestWord || word.AsSpan().ContainsAnyInRange('0', '9') || Classes["plain"].Contains(word);

    /// <summary>True for a word of mounting hardware.</summary>
    public static bool IsHardware(string word) => Classes["accessory"].Contains(word);

    private static Dictionary<string, string> Accented(string description) => System.Text.Ascii.IsValid(description)
        ? []
        : Tokenizer.Split(description.Normalize()).Where(w => !System.Text.Ascii.IsValid(w)).GroupBy(w => TextFold.Fold(w), StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);

    // Signs that begin what a part goes with.
    private static int Cut(string text)
    {
        int end = text.AsSpan().IndexOfAny("+&;(");
        foreach (string sign in (string[])[" w. ", " w/", " m. "])
        {
            int at = text.IndexOf(sign, StringComparison.OrdinalIgnoreCase);
            end = at > 0 && (end < 0 || at < end) ? at : end;
        }

        return end > 0 ? end : text.Length;
    }

    // Offices shorten the words of their lists: MTR, EVAP FAN.
    private static string Long(string word) => Short.GetValueOrDefault(word, word);

    private static Dictionary<string, HashSet<string>> Read() => Rows().Where(r => r.Class != "short")
        .GroupBy(r => r.Class, StringComparer.Ordinal)
        .ToDictionary(g => g.Key, g => g.SelectMany(r => r.Words).SelectMany(w => Tokenizer.Folded(w)).ToHashSet(StringComparer.Ordinal), StringComparer.Ordinal);

    private static IEnumerable<(string Class, string[] Words)> Rows() => Version.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Skip(1)
        .Select(l => l.Split(','))
        .Select(c => (c[0], c[2].Split('|')));

    [GeneratedRegex(@"\[[^\]]*\]", RegexOptions.CultureInvariant)]
    private static partial Regex Marks();

    [GeneratedRegex(@"\bo[- ]rings?\b", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Rings();
}
