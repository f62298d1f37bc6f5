using System.Buffers;
using System.Text.RegularExpressions;

namespace PartsSignal.Pipeline.Privacy;

/// <summary>Cuts e-mail addresses, however the sign and the dots are written, and addresses of web pages.</summary>
internal static partial class EmailCuts
{
    private static readonly SearchValues<string> Signs = SearchValues.Create(["@", "\uff20", "\ufe6b", "(at", "[at", "{at", "<at", "( at", "[ at", "{ at", "< at", "(\u00e4", "[\u00e4", "(a)", "[a]", "arroba", "arobase", "chiocciola", "malpa", "ma\u0142pa", "apenstaart", "klammeraffe", " \u00e4t ", "-at-", "_at_", "*at*", "/at/", "|at|", "~at~", "- at -", ".me/", ".ly/", ".gg/", ".tv/", ".app/", "://", "www", ".com", ".net", ".org", ".info", ".co."], StringComparison.OrdinalIgnoreCase);

    private static readonly SearchValues<string> At = SearchValues.Create([" at ", "\u00a0at", "at\u00a0", "\tat", "\nat"], StringComparison.OrdinalIgnoreCase);
    // What an address has beside an "at" in words: a mark around it, a dot in words or in brackets, or an ending that the pattern knows.
    private static readonly SearchValues<string> Dots = SearchValues.Create(["dot", "\u00e4t", .. "com net org info edu gov biz eu de uk fr es nl it pl at ch be us ca au ie se no dk fi pt cz io".Split(' ').Select(e => "." + e)], StringComparison.OrdinalIgnoreCase);
    private static readonly SearchValues<char> Around = SearchValues.Create("([{<-_*/|~");

    private static readonly SearchValues<char> Marks = SearchValues.Create("@([{<.");
    private static readonly SearchValues<char> WideMarks = SearchValues.Create("\uff20\ufe6b");
    private static readonly HashSet<ulong> SignWords = [.. new[] { "at", "arroba", "arobase", "chiocciola", "malpa", "apenstaart", "apenstaartje", "klammeraffe" }.Select(w => WordList.Hash(w))];
    private static readonly ulong SignMask = SignWords.Aggregate(0UL, (mask, word) => mask | TextTokens.MaskOf(word));

    /// <summary>Cuts what a text holds of them.</summary>
    public static void Apply(TextTokens tokens, TextCuts cuts)
    {
        // Most texts say "at" somewhere and end with a full stop: no reason to run the patterns.
        string text = tokens.Text;
        if (!MayHold(tokens) || (!text.AsSpan().ContainsAny(Signs) && !(text.AsSpan().ContainsAny(At) && (text.AsSpan().ContainsAny(Dots) || text.AsSpan().ContainsAny(Around)))))
        {
            return;
        }

        foreach (ValueMatch match in Email().EnumerateMatches(text))
        {
            cuts.Cut(match.Index, match.Index + match.Length, CutKind.Email);
        }

        foreach (ValueMatch match in Page().EnumerateMatches(text))
        {
            cuts.Cut(match.Index, match.Index + match.Length, CutKind.Email);
        }
    }

    // A quick check that most texts fail: a sign of an address, or a word for one.
    private static bool MayHold(TextTokens tokens)
    {
        if (tokens.Text.AsSpan().ContainsAny(Marks) || (!System.Text.Ascii.IsValid(tokens.Text) && tokens.Text.AsSpan().ContainsAny(WideMarks)))
        {
            return true;
        }

        for (int i = 0; i < tokens.Count && (tokens.Mask & SignMask) != 0; i++)
        {
            if (SignWords.Contains(tokens[i].Hash))
            {
                return true;
            }
        }

        return false;
    }

    // Name, sign, domain. A sign in words needs a dot in words or a known ending behind it: "leaks at door" is no address.
    [GeneratedRegex(
        @"(?:[\p{L}\p{N}_+%'-]{1,64}\s?(?:\.|_|-|\((?:dot|punkt|point|punto|punt|kropka)\)|\[(?:dot|punkt|point|punto|punt|kropka)\]|\b(?:dot|punkt|point|punto|punt|kropka)\b)\s?){0,4}[\p{L}\p{N}_+%'-]{1,64}\s{0,2}"
        + @"(?:(?:@|\uff20|\ufe6b|[(\[{<]\s?(?:at|a|@|\u00e4t)\s?[)\]}>]|[-_*/|~]\s?at\s?[-_*/|~]|\b(?:arroba|arobase|chiocciola|ma[l\u0142]pa|apenstaartje|klammeraffe|\u00e4t)\b)\s{0,2}[\p{L}\p{N}-]{1,63}"
        + @"(?:\s?(?:\.|[-_*/|~]\s?dot\s?[-_*/|~]|[(\[{]\s?(?:dot|punkt|point|punto|punt|kropka|\.)\s?[)\]}]|\b(?:dot|punkt|point|punto|punt|kropka)\b)\s?[\p{L}\p{N}-]{2,63}){0,4}"
        + @"|\bat\b\s{0,2}[\p{L}\p{N}-]{1,63}(?:\s?(?:[(\[{]\s?(?:dot|\.)\s?[)\]}]|\bdot\b)\s?[\p{L}\p{N}-]{2,63}){1,4}"
        + @"|\bat\b\s{0,2}[\p{L}\p{N}-]{1,63}(?:\.[\p{L}\p{N}-]{1,63}){0,3}\s?\.(?:com|net|org|info|edu|gov|biz|eu|de|uk|fr|es|nl|it|pl|at|ch|be|us|ca|au|ie|se|no|dk|fi|pt|cz|io)\b)",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Email();

    [GeneratedRegex(@"\b(?:https?://|www\.)\S{1,200}|\b[\p{L}\p{N}-]{2,63}(?:\.[\p{L}\p{N}-]{1,63}){0,3}\.(?:com|net|org|info|co\.uk)\b|\b\p{L}[\p{L}\p{N}-]{0,62}\.(?:me|ly|gg|tv|app)/\S{1,200}", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Page();
}
