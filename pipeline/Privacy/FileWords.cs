using System.Security.Cryptography;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Privacy;

/// <summary>
/// The words that texts of one file may keep: those of its languages' dictionaries, of the program's and the shop's own
/// tables, and those that at least five different customers of the file use. Everything else may be somebody's name.
/// </summary>
internal sealed class FileWords
{
    /// <summary>Different customers who vouch for a word.</summary>
    public const int Customers = 5;

    private const int LongestAbbreviation = 3;
    private const int LongestEnding = 4;
    private const int LongestRead = 8;
    private const int ShortestSlip = 4;
    private const int LongestSlip = 12;
    private static readonly System.Buffers.SearchValues<char> Vowels = System.Buffers.SearchValues.Create("aeiouy");
    private const int ShortestFirst = 2;
    private const int ShortestStem = 4;
    private const int ShortestLast = 5;
    private const int LongestJoint = 2;
    private readonly WordList[] _lists;
    private readonly HashSet<ulong> _frequent;
    private readonly HashSet<ulong>[] _trade;
    private readonly HashSet<ulong> _common;
    private readonly HashSet<ulong> _everyday;
    private readonly HashSet<ulong> _barred;

    /// <summary>Prepares.</summary>
    /// <param name="languages">The file's languages.</param>
    /// <param name="frequent">Hashes of the words that enough customers use.</param>
    /// <param name="values">Values of columns of words that enough rows hold, each after its field's name and a tab.</param>
    /// <param name="shapes">Shapes of long numbers that columns of codes usually hold, each after its field's name and a tab.</param>
    /// <param name="fewest">Different customers that a value needs: five, or fewer in a short file.</param>
    /// <param name="complaints">Reads misspelt words of complaints.</param>
    /// <param name="common">Hashes of the words that many rows have, so that they are no misspelling; null: none.</param>
    /// <param name="lowercase">Hashes of the words that enough customers use and mostly write in small letters; null: none.</param>
    /// <param name="barred">Hashes of words that may never stay, whoever uses them; null: none.</param>
    public FileWords(IReadOnlyList<string> languages, IEnumerable<ulong> frequent, IEnumerable<string> values, IEnumerable<string> shapes, int fewest, ComplaintWordTable complaints, IEnumerable<ulong>? common = null, IEnumerable<ulong>? lowercase = null, IEnumerable<ulong>? barred = null)
    {
        _common = [.. common ?? []];
        _barred = [.. barred ?? []];
        Languages = languages;
        _lists = [.. languages.Select(WordList.Get)];
        _frequent = [.. frequent];
        _everyday = [.. (lowercase ?? []).Where(IsInDictionary)];
        _trade = [.. languages.Select(PersonalWords.Trade.GetValueOrDefault).OfType<HashSet<ulong>>()];
        Values = values.ToHashSet(StringComparer.OrdinalIgnoreCase);
        Shapes = shapes.ToHashSet(StringComparer.Ordinal);
        HasNounsInCapitals = languages.Contains("de");
        JoinsWords = HasNounsInCapitals || languages.Contains("nl");
        (Fewest, Complaints) = (fewest, complaints.For(languages, IsWord));
    }

    /// <summary>Changes when a shipped list or the rules for cutting change; part of the key of staged files.</summary>
    public static string Version { get; } = "5-" + HashOfLists();

    /// <summary>The file's languages.</summary>
    public IReadOnlyList<string> Languages { get; }

    /// <summary>Values of columns of words that enough rows hold.</summary>
    public IReadOnlySet<string> Values { get; }

    /// <summary>Shapes of long numbers that columns of codes usually hold.</summary>
    public IReadOnlySet<string> Shapes { get; }

    /// <summary>Different customers that a value needs.</summary>
    public int Fewest { get; }

    /// <summary>True when one of the languages writes every noun with a capital.</summary>
    public bool HasNounsInCapitals { get; }

    /// <summary>True when one of the languages writes compounds as one word, more than any dictionary lists.</summary>
    public bool JoinsWords { get; }

    /// <summary>Reads the file's complaints.</summary>
    public ComplaintWordTable Complaints { get; }

    /// <summary>Words of a file of which nothing is known, in English.</summary>
    public FileWords Neutral => field ??= Of(Complaints, "en");

    /// <summary>Words of a file of which nothing is known but its languages.</summary>
    public static FileWords Of(ComplaintWordTable complaints, params IReadOnlyList<string> languages) => new(languages, [], [], [], 1, complaints);

    /// <summary>The same with more values.</summary>
    public FileWords With(IEnumerable<string> values) => new(Languages, _frequent, Values.Concat(values), Shapes, Fewest, Complaints, _common, _everyday, _barred);

    /// <summary>True for a word that may stand.</summary>
    public bool IsKnown(ReadOnlySpan<char> folded, ulong hash) => IsListed(folded, hash) || ((IsMisspelt(folded, hash) || IsCompound(folded, hash)) && !_barred.Contains(hash));

    /// <summary>The same without misspelled words: in a code a slip is no word.</summary>
    public bool IsListed(ReadOnlySpan<char> folded, ulong hash) =>
        (_barred.Count == 0 || !_barred.Contains(hash))
        && (folded.Length <= 1 || (PersonalWords.Classes.Of(hash) & (WordClass.Own | WordClass.Function | WordClass.Common)) != 0 || IsInDictionary(hash) || IsTrade(hash) || _frequent.Contains(hash) || IsVariant(folded));

    /// <summary>True for a word of the language that enough customers mostly write in small letters, so that a capital makes no name of it.</summary>
    public bool IsEveryday(ulong hash) => _everyday.Contains(hash);

    /// <summary>True for a slip in one of the values that enough rows hold.</summary>
    public bool IsSlipOfValue(string cell, string field)
    {
        string typed = cell.ToLowerInvariant();
        return Values.Any(v => v.Length > field.Length + ShortestSlip && v[field.Length] == '\t' && v.StartsWith(field, StringComparison.Ordinal) && FuzzyMatch.IsClose(typed, v[(field.Length + 1)..].ToLowerInvariant()));
    }

    /// <summary>True for a word that enough customers use.</summary>
    public bool IsFrequent(ulong hash) => _frequent.Contains(hash);

    /// <summary>True for a short word without a vowel, such as <c>hd</c>: an abbreviation, even where a list has it as a name.</summary>
    public static bool IsAbbreviation(ReadOnlySpan<char> folded) => folded.Length <= LongestAbbreviation && !folded.ContainsAny(Vowels);

    /// <summary>True for a proper name; a possessive counts as its name.</summary>
    public bool IsName(ReadOnlySpan<char> folded, ulong hash) =>
        (WordList.Get("names").Contains(hash) && !IsAbbreviation(folded)) || (folded.Length > 3 && folded[^1] == 's' && WordList.Get("names").Contains(WordList.Hash(folded[..^1])));

    /// <summary>True for a word of the shipped tables in one of the file's languages.</summary>
    public bool IsTrade(ulong hash)
    {
        foreach (HashSet<ulong> words in _trade)
        {
            if (words.Contains(hash))
            {
                return true;
            }
        }

        return false;
    }

    private static string HashOfLists()
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (string list in PersonalWords.Languages.Append("names"))
        {
            hash.AppendData(WordList.Bytes(list));
        }

        hash.AppendData(System.Text.Encoding.UTF8.GetBytes(WordTable.ReadDefault("personal-words.csv") + WordTable.ReadDefault("content-words.csv")));
        return Convert.ToHexStringLower(hash.GetHashAndReset())[..16];
    }

    // A word of the language, or one that many rows have: no slip in another.
    private bool IsWord(string folded)
    {
        ulong hash = WordList.Hash(folded);
        return IsInDictionary(hash) || _common.Contains(hash) || IsVariant(folded);
    }

    private bool IsInDictionary(ulong hash)
    {
        foreach (WordList list in _lists)
        {
            if (list.Contains(hash))
            {
                return true;
            }
        }

        return false;
    }

    // Stromkabel, Ersatzkeilriemen. The last part must be a word for a machine or a fault, since most surnames that are
    // compounds end otherwise; a listed name is none.
    private bool IsCompound(ReadOnlySpan<char> folded, ulong hash)
    {
        if (!JoinsWords || folded.Length < ShortestFirst + ShortestLast || WordList.Get("names").Contains(hash))
        {
            return false;
        }

        for (int last = ShortestFirst; last <= folded.Length - ShortestLast; last++)
        {
            ulong end = WordList.Hash(folded[last..]);
            if (((PersonalWords.Classes.Of(end) & (WordClass.Own | WordClass.Everyday)) == WordClass.Own || IsTrade(end)) && IsFirstPart(folded[..last]))
            {
                return true;
            }
        }

        return false;
    }

    // As it stands, or with the letters that join it to the next: Verlangerung-s-kabel; or the stem of a verb: Abtau-heizung.
    private bool IsFirstPart(ReadOnlySpan<char> folded)
    {
        if (folded.Length >= ShortestStem && (IsInDictionary(WordList.Hash($"{folded}en")) || IsInDictionary(WordList.Hash($"{folded}n"))))
        {
            return true;
        }

        for (int joint = 0; joint <= LongestJoint && folded.Length - joint >= ShortestFirst; joint++)
        {
            if (folded[^joint..] is "" or "s" or "n" or "en" or "es" && IsInDictionary(WordList.Hash(folded[..^joint])))
            {
                return true;
            }
        }

        return false;
    }

    // Umlauts written as two letters.
    private bool IsVariant(ReadOnlySpan<char> folded)
    {
        if (!HasNounsInCapitals || folded.IndexOf('e') < 1 || folded.Length > 64)
        {
            return false;
        }

        Span<char> plain = stackalloc char[64];
        int n = 0;
        for (int i = 0; i < folded.Length; i++)
        {
            if (!(folded[i] == 'e' && i > 0 && folded[i - 1] is 'a' or 'o' or 'u'))
            {
                plain[n++] = folded[i];
            }
        }

        return n < folded.Length && IsInDictionary(WordList.Hash(plain[..n]));
    }

    // What the complaint reader takes for one of its words, unless it is somebody's name.
    private bool IsMisspelt(ReadOnlySpan<char> folded, ulong hash)
    {
        if (folded.Length is < 4 or > LongestSlip || WordList.Get("names").Contains(hash))
        {
            return false;
        }

        foreach (string stem in PersonalWords.Own.Stems)
        {
            if (folded.Length <= stem.Length + LongestEnding && folded.StartsWith(stem))
            {
                return true;
            }
        }

        // A stem takes any ending: a long word that only begins like one may be a name.
        return folded.Length <= LongestRead && Complaints.Reads(folded.ToString());
    }
}
