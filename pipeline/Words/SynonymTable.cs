namespace PartsSignal.Pipeline.Words;

/// <summary>Whole cells that stand for one of our words: appliance types, outcomes, customer kinds, size classes.</summary>
internal sealed class SynonymTable
{
    private const int MaxCached = 10_000;
    private readonly Dictionary<string, string> _exact = new(StringComparer.Ordinal);
    private readonly BoundedCache<string, string?> _cache = new(MaxCached);
    private readonly ComponentClassifier _within;

    /// <summary>Prepares a table.</summary>
    public SynonymTable(IReadOnlyList<KeywordRule> phrases)
    {
        foreach (KeywordRule phrase in phrases)
        {
            _exact.TryAdd(string.Join(' ', phrase.Stems), phrase.Meaning);
            _exact.TryAdd(phrase.Meaning.Replace('_', ' '), phrase.Meaning);
        }

        _within = new ComponentClassifier(phrases);
    }

    /// <summary>Our word for a cell: by the whole cell, else by the words in it, or null if unknown.</summary>
    public string? Find(string? cell) =>
        string.IsNullOrWhiteSpace(cell) ? null
        : _cache.TryGet(cell, out string? known) ? known
        : _cache.Keep(cell, _exact.GetValueOrDefault(string.Join(' ', Tokenizer.Split(cell))) ?? _within.Component(cell));
}
