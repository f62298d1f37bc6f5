using System.Collections.Concurrent;
using CsvHelper;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>
/// How well a header names a field, in seven languages. A header and a phrase are compared word by word, each word by
/// how few fields use it; a word nobody knows counts neither way. Names that begin with <c>~</c> are no fields but what
/// offices also write down (totals, taxes, row numbers), so that a header can be known to mean something else.
/// </summary>
internal sealed class HeaderLexicon
{
    private const double UnknownWeight = 0.6;
    private const double SmallWeight = 0.12;
    private static readonly Dictionary<string, string> Same = Pairs("number no|nr no|num no|nbr no|numero no|nummer no|numer no|n no|dt date|datum date|fecha date|dat date|qnty quantity|qte quantite|appl appliance|mfg manufacturer|cust customer|addr address|desc description|inv invoice|ref reference|tel telephone|labor labour|amt amount|acct account|hrs hours|mins minutes|ord order|pos position|uds unidades|ubic ubicacion|dir direccion|bez bezeichnung|beschr beschreibung|art artikel|pn part|mk make|compl complaint");
    // Words for "that which names it" stand for each other, not wholly.
    private static readonly string[] Naming = ["no", "id", "code", "reference", "codigo", "codice", "kod", "key"];
    private static readonly HashSet<string> Small = [.. "of the a an to for by in on at and or de des du d la le les l el los del al en il lo di da do dei della een het der die das den von am im op van f t tbl col fld field x s".Split(' ')];
    // What words get at their end where they are bent: numbers, cases, participles.
    private static readonly HashSet<string> Endings = [.. "s es e n en er em r i y a o u d ed ing te ne t ow ami ach ie ia".Split(' ')];
    private readonly List<(int Field, Word[] Words, double Weight)> _phrases = [];
    private readonly Dictionary<string, Word> _words = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, (Word Word, double Likeness)[]> _like = new(StringComparer.Ordinal);

    /// <summary>Prepares a table of words.</summary>
    /// <param name="table">Text of the table: field, language, phrases divided by <c>|</c>.</param>
    /// <param name="leaveOut">Phrases, in plain words, that are not to be used; null: use all.</param>
    public HeaderLexicon(string table, IReadOnlySet<string>? leaveOut = null)
    {
        var fields = new List<string>();
        var phrases = new List<(int Field, string[] Words)>();
        using var csv = CsvReader.FromText(table, new CsvReaderOptions { Separator = ',' });
        while (csv.Read())
        {
            string field = csv.GetString("field");
            int at = fields.IndexOf(field);
            if (at < 0)
            {
                at = fields.Count;
                fields.Add(field);
            }

            phrases.AddRange(csv.GetString("words").Split('|').Select(p => (at, Canonical(p))).Where(p => leaveOut?.Contains(string.Join(' ', p.Item2)) != true));
        }

        Fields = fields;
        foreach ((string text, int spread) in phrases.SelectMany(p => p.Words.Select(w => (Word: w, p.Field))).Distinct().GroupBy(w => w.Word).Select(g => (g.Key, g.Count())).OrderBy(w => w.Key, StringComparer.Ordinal))
        {
            double weight = Small.Contains(text) ? SmallWeight : 1 / (1 + (0.12 * (spread - 1)));
            _words.Add(text, new Word(_words.Count, text, weight));
        }

        _phrases.AddRange(phrases.Select(p => (p.Field, p.Words.Select(w => _words[w]).ToArray(), p.Words.Sum(w => _words[w].Weight))));
    }

    /// <summary>The shipped table.</summary>
    public static HeaderLexicon Shipped { get; } = new(WordTable.ReadDefault("field-words.csv"));

    /// <summary>What names of files and sheets say of kinds.</summary>
    public static HeaderLexicon Kinds { get; } = new(WordTable.ReadDefault("kind-words.csv"));

    /// <summary>Names of fields, and of what is none.</summary>
    public IReadOnlyList<string> Fields { get; }

    /// <summary>A phrase as it is compared.</summary>
    public static string[] Canonical(string phrase) => [.. PlainHeader.Words(phrase).Where(w => !char.IsAsciiDigit(w[0])).Select(w => Same.GetValueOrDefault(w, w))];

    /// <summary>For each of <see cref="Fields"/> how well the header names it: 1 wholly, 0 not at all.</summary>
    public double[] Match(string header)
    {
        string[] words = Canonical(header);
        var best = new double[Fields.Count];
        if (words.Length == 0)
        {
            return best;
        }

        (Word Word, double Likeness)[][] like = [.. words.Select(Like)];
        double[] weights = [.. words.Select((w, i) => Small.Contains(w) || w.Length == 1 ? SmallWeight : like[i].Length == 0 ? UnknownWeight : like[i].Max(l => l.Word.Weight * l.Likeness))];
        double all = weights.Sum();
        var found = new double[_words.Count];
        foreach ((Word word, double likeness) in like.SelectMany(l => l))
        {
            found[word.Id] = Math.Max(found[word.Id], likeness);
        }

        foreach ((int field, Word[] phrase, double weight) in _phrases)
        {
            double matched = 0;
            foreach (Word word in phrase)
            {
                matched += found[word.Id] * word.Weight;
            }

            if (matched > 0)
            {
                best[field] = Math.Max(best[field], Math.Min(1, 2 * matched / (all + weight)));
            }
        }

        return best;
    }

    private (Word Word, double Likeness)[] Like(string typed) => _like.GetOrAdd(typed, Find);

    private (Word, double)[] Find(string typed)
    {
        if (_words.TryGetValue(typed, out Word? exact))
        {
            return [(exact, 1), .. Naming.Contains(typed) ? _words.Values.Where(w => w != exact && Naming.Contains(w.Text)).Select(w => (w, 0.6)) : []];
        }

        // Written out umlauts: Geraet is Gerat here.
        string folded = typed.Replace("ae", "a", StringComparison.Ordinal).Replace("oe", "o", StringComparison.Ordinal).Replace("ue", "u", StringComparison.Ordinal);
        if (folded != typed && _words.TryGetValue(folded, out exact))
        {
            return [(exact, 1)];
        }

        if (Small.Contains(typed) || typed.Length < 2)
        {
            return [];
        }

        (Word, double)[] near = [.. _words.Values.Select(w => (w, Likeness(folded, w.Text))).Where(w => w.Item2 > 0)];
        return near.Length > 0 ? near : Compound(folded);
    }

    // Words written together: Auftragsnummer is auftrag and nummer.
    private (Word, double)[] Compound(string typed)
    {
        for (int cut = Math.Min(typed.Length - 2, 14); cut >= 3; cut--)
        {
            if (Part(typed[..cut]) is { } first)
            {
                foreach (int skip in (ReadOnlySpan<int>)[0, 1, 2])
                {
                    if (cut + skip + 2 <= typed.Length && (skip == 0 || typed[cut] is 's' or 'n' or 'e' or 'r') && Part(typed[(cut + skip)..]) is { } second)
                    {
                        return [(first, 0.9), (second, 0.9)];
                    }
                }
            }
        }

        return [];
    }

    private Word? Part(string text) => text.Length >= 2 && _words.GetValueOrDefault(Same.GetValueOrDefault(text, text)) is { } word && (text.Length >= 3 || word.Text == "no") ? word : null;

    private static double Likeness(string typed, string known) =>
        Small.Contains(known) || known.Length < 3 ? 0
        : typed.Length >= 3 && known.StartsWith(typed, StringComparison.Ordinal) ? (typed.Length * 2 >= known.Length ? 0.85 : 0.7)
        : known.Length >= 4 && typed.StartsWith(known, StringComparison.Ordinal) && Endings.Contains(typed[known.Length..]) ? 0.85
        : typed.Length >= 5 && known.Length >= 5 && typed[0] == known[0] && FuzzyMatch.IsClose(typed, known) ? 0.8
        : typed.Length is 2 or 3 or 4 && IsSkeleton(typed, known) ? 0.7
        : 0;

    // A word without its vowels: mdl for model.
    private static bool IsSkeleton(string typed, string known)
    {
        if (typed.AsSpan().ContainsAny("aeiou") || typed[0] != known[0] || known.Length < typed.Length + 2)
        {
            return false;
        }

        string consonants = known[0] + string.Concat(known[1..].Where(c => !"aeiouy".Contains(c)));
        return typed == consonants || (typed.Length >= 3 && consonants.StartsWith(typed, StringComparison.Ordinal) && consonants.Length <= typed.Length + 1);
    }

    private static Dictionary<string, string> Pairs(string pairs) =>
        pairs.Split('|').Select(p => p.Split(' ')).ToDictionary(p => p[0], p => p[1], StringComparer.Ordinal);

    private sealed record Word(int Id, string Text, double Weight);
}
