using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Transform;

/// <summary>A description of parts in a shop's files.</summary>
/// <param name="Description">Lower case, trimmed.</param>
/// <param name="Times">Lines that have it.</param>
internal sealed record DescribedPart(string Description, long Times);

/// <summary>What a description is called.</summary>
/// <param name="Description">The description.</param>
/// <param name="Name">The name of its component, or null where its words are none.</param>
/// <param name="Meant">The description that it shortens, or itself.</param>
/// <param name="IsAccessory">Whether it names mounting hardware, covers or consumables.</param>
internal sealed record NamedPart(string Description, string? Name, string Meant, bool IsAccessory);

/// <summary>
/// One name for descriptions of one component: those that differ only in numbers, sizes, the order of words or the brand
/// they are for (<c>grinder Velt</c>, <c>grinder Brun</c>), and those that shorten another (<c>safety val.</c>). The commonest
/// writing gives the name.
/// </summary>
internal sealed class OwnPartNames
{
    private const int ShortestBrand = 3;
    private const int ShortestStart = 3;
    private const int FewestBrands = 2;
    private readonly HashSet<string> _brands;

    /// <summary>Finds the names.</summary>
    /// <param name="parts">Every description of the shop's files.</param>
    /// <param name="brands">The brands that the files name.</param>
    public OwnPartNames(IReadOnlyList<DescribedPart> parts, IReadOnlyList<string> brands)
    {
        _brands = [.. brands.SelectMany(b => Tokenizer.Folded(b)).Where(w => w.Length >= ShortestBrand)];
        Wording[] read = [.. parts.Select(p => new Wording(p, PartPhrase.Parse(p.Description)))];
        HashSet<string> general = General(read);
        foreach (Wording wording in read)
        {
            string[] without = [.. wording.Words.Where(w => !IsBrand(w))];
            wording.Words = without.Length < wording.Words.Length && general.Contains(Key(without)) ? without : wording.Words;
        }

        ILookup<int, Wording> byLength = read.ToLookup(w => w.Words.Length);
        foreach (Wording wording in read)
        {
            Wording[] longer = wording.HasDot ? [.. byLength[wording.Words.Length].Where(l => !l.HasDot && wording.Shortens(l)).DistinctBy(l => Key(l.Words))] : [];
            wording.Meant = longer is [var one] ? one : wording;
        }

        Dictionary<string, string> usual = read.Where(w => w.Meant.Name is not null)
            .GroupBy(w => Key(w.Meant.Words), StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.GroupBy(w => w.Meant.Name!, StringComparer.Ordinal).OrderByDescending(n => n.Sum(w => w.Part.Times)).ThenBy(n => n.Key, StringComparer.Ordinal).First().Key, StringComparer.Ordinal);
        All = [.. read.Select(w => new NamedPart(w.Part.Description, w.Meant.Name is null ? null : usual[Key(w.Meant.Words)], w.Meant.Part.Description, w.Phrase.IsAccessory))];
    }

    /// <summary>The descriptions in the order given.</summary>
    public IReadOnlyList<NamedPart> All { get; }

    // Names that stand without a brand too, or with several: only then is the word a brand and not a part's own.
    private HashSet<string> General(Wording[] read) =>
    [
        .. read.Select(w => (Brand: string.Join(' ', w.Words.Where(IsBrand)), Others: Key(w.Words.Where(x => !IsBrand(x)))))
            .Where(w => w.Others.Length > 0)
            .GroupBy(w => w.Others, StringComparer.Ordinal)
            .Where(g => g.Select(w => w.Brand).Distinct(StringComparer.Ordinal).Count() >= FewestBrands)
            .Select(g => g.Key),
    ];

    private bool IsBrand(string word) => word.Length >= ShortestBrand && _brands.Any(b => b.StartsWith(word, StringComparison.Ordinal));

    private static string Key(IEnumerable<string> words) => string.Join(' ', words.Order(StringComparer.Ordinal));

    private sealed class Wording(DescribedPart part, PartPhrase phrase)
    {
        public DescribedPart Part { get; } = part;

        public PartPhrase Phrase { get; } = phrase;

        public string[] Words { get; set; } = [.. phrase.Telling];

        public Wording Meant { get; set; } = null!;

        public string? Name => Phrase.NameOf(Words);

        public bool HasDot { get; } = part.Description.Contains('.', StringComparison.Ordinal);

        // "safety val." for "safety valve": every word is the other's, or its start with a dot.
        public bool Shortens(Wording other)
        {
            bool shortens = false;
            for (int i = 0; i < Words.Length; i++)
            {
                bool isStart = Words[i].Length >= ShortestStart && other.Words[i].Length > Words[i].Length && other.Words[i].StartsWith(Words[i], StringComparison.Ordinal) && IsDotted(i);
                if (!isStart && Words[i] != other.Words[i])
                {
                    return false;
                }

                shortens |= isStart;
            }

            return shortens;
        }

        private bool IsDotted(int word) => Part.Description.Split('.')[..^1].Any(p => Tokenizer.Folded(p) is [.., var last] && last == Words[word]);
    }
}
