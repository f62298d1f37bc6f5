using System.Collections.Concurrent;
using PartsSignal.Analysis.CrossReference;

namespace PartsSignal.Analysis.Prediction.LogOdds;

/// <summary>Words a shop types, most frequent first, and which of them a typed word means.</summary>
public sealed class WordList
{
    private const int LeastLength = 3;
    private const int MostCached = 50_000;
    private readonly HashSet<string> _known;
    private readonly HashSet<string> _stems;
    private readonly ConcurrentDictionary<string, string?> _meant = new(StringComparer.Ordinal);

    /// <summary>A list of words.</summary>
    public WordList(IReadOnlyList<string> words)
    {
        (Words, _known) = (words, words.ToHashSet(StringComparer.Ordinal));
        _stems = words.Select(ComplaintWords.Stem).ToHashSet(StringComparer.Ordinal);
    }

    /// <summary>The words, most frequent first.</summary>
    public IReadOnlyList<string> Words { get; }

    /// <summary>
    /// Distinct stems a text means, in order of appearance: of the word itself where it or its stem is known, else of the most frequent word one slip
    /// away (a letter wrong, missing, too many, or two swapped). Words that mean none are left out.
    /// </summary>
    public IReadOnlyList<string> Meant(string? text) =>
        [.. ComplaintWords.Split(text).Select(Find).OfType<string>().Select(ComplaintWords.Stem).Distinct(StringComparer.Ordinal)];

    private string? Find(string word)
    {
        if (_known.Contains(word) || (word.Length >= ComplaintWords.StemLength && _stems.Contains(ComplaintWords.Stem(word))))
        {
            return word;
        }

        if (_meant.TryGetValue(word, out string? found))
        {
            return found;
        }

        found = word.Length < LeastLength ? null : Words.FirstOrDefault(w => w.Length >= LeastLength && StringDistance.OptimalAlignment(w, word, 1) <= 1);
        if (_meant.Count < MostCached)
        {
            _meant[word] = found;
        }

        return found;
    }
}
