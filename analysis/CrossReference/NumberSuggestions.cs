using System.Collections.Immutable;
using System.Numerics;

namespace PartsSignal.Analysis.CrossReference;

/// <summary>A known number close to a typed one. Never applied by itself: one digit is another part.</summary>
/// <param name="Number">The known number.</param>
/// <param name="Edits">Characters apart, by optimal string alignment of the compact keys.</param>
/// <param name="Similarity">Jaro-Winkler similarity, 0 to 1.</param>
public sealed record NumberSuggestion(string Number, int Edits, double Similarity);

/// <summary>A number the shop knows.</summary>
/// <param name="NumberKey">Its compact key.</param>
/// <param name="Number">As shown.</param>
internal sealed record KnownNumber(string NumberKey, string Number);

/// <summary>Finds known numbers close to a typed one.</summary>
public sealed class NumberSuggestions
{
    private readonly ImmutableArray<(string Key, string Number, ulong Signs)>[] _byLength;
    private readonly ILookup<string, (string Key, string Number)> _withoutZeros;
    private readonly ILookup<string, (string Key, string Number)> _lookAlikes;

    /// <summary>Prepares the known numbers.</summary>
    /// <param name="known">Compact key and number as shown.</param>
    public NumberSuggestions(IEnumerable<(string Key, string Number)> known)
    {
        (string Key, string Number)[] all = [.. known];
        _withoutZeros = all.ToLookup(k => k.Key.TrimStart('0'), StringComparer.Ordinal);
        _lookAlikes = all.ToLookup(k => LookAlike(k.Key), StringComparer.Ordinal);
        ILookup<int, (string, string, ulong)> groups = all.ToLookup(k => k.Key.Length, k => (k.Key, k.Number, Signs(k.Key)));
        int longest = groups.Select(g => g.Key).DefaultIfEmpty(0).Max();
        _byLength = [.. Enumerable.Range(0, longest + 1).Select(n => groups[n].ToImmutableArray())];
    }

    /// <summary>Most edits that still count as close: 1 up to 5 characters, 2 from 6 on.</summary>
    public static int MostEdits(int length) => length < 6 ? 1 : 2;

    /// <summary>
    /// The closest known numbers: those that differ in look-alike signs or in leading zeros alone, then fewest edits,
    /// then most similar.
    /// </summary>
    /// <param name="typedKey">Compact key of the typed number.</param>
    /// <param name="most">How many at most.</param>
    public IReadOnlyList<NumberSuggestion> Closest(string typedKey, int most = 3)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(most);
        int edits = MostEdits(typedKey.Length);
        ulong signs = Signs(typedKey);
        string alike = LookAlike(typedKey);
        var found = _withoutZeros[typedKey.TrimStart('0')].Concat(_lookAlikes[alike]).Select(k => (Suggestion: Compare(typedKey, k.Key, k.Number), Alike: true)).ToList();
        for (int length = Math.Max(1, typedKey.Length - edits); length <= Math.Min(_byLength.Length - 1, typedKey.Length + edits); length++)
        {
            foreach ((string key, string number, ulong known) in _byLength[length])
            {
                // every edit changes at most one sign on either side
                if (BitOperations.PopCount(signs & ~known) > edits || BitOperations.PopCount(known & ~signs) > edits)
                {
                    continue;
                }

                if (StringDistance.OptimalAlignment(typedKey, key, edits) <= edits)
                {
                    found.Add((Compare(typedKey, key, number), LookAlike(key) == alike));
                }
            }
        }

        return [.. found
            .OrderBy(f => f.Alike ? 0 : f.Suggestion.Edits)
            .ThenBy(f => f.Suggestion.Edits)
            .ThenByDescending(f => f.Suggestion.Similarity)
            .ThenBy(f => f.Suggestion.Number, StringComparer.Ordinal)
            .Select(f => f.Suggestion)
            .DistinctBy(s => s.Number)
            .Take(most)];
    }

    private static NumberSuggestion Compare(string typedKey, string key, string number) =>
        new(number, StringDistance.OptimalAlignment(typedKey, key), StringDistance.JaroWinkler(typedKey, key) ?? 0);

    // a wider set than the confusable key: good enough to rank by, not to match by
    private static string LookAlike(string key) => string.Create(key.Length, key, static (signs, k) =>
    {
        for (int i = 0; i < k.Length; i++)
        {
            signs[i] = k[i] switch { 'O' or 'Q' or 'D' => '0', 'I' or 'L' => '1', 'S' => '5', 'B' => '8', 'Z' => '2', 'G' => '6', var c => c };
        }
    });

    private static ulong Signs(string key)
    {
        ulong signs = 0;
        foreach (char c in key)
        {
            signs |= 1UL << (c & 63);
        }

        return signs;
    }
}
