using System.Collections.Concurrent;
using System.IO.Compression;

namespace PartsSignal.Pipeline.Privacy;

/// <summary>
/// A shipped list of folded words, as <c>dictionary/build.mjs</c> makes them, held as fingerprints of 31 bits in a hash table.
/// A word that is not on the list is taken for one that is about once in a billion.
/// </summary>
internal sealed class WordList
{
    private static readonly ConcurrentDictionary<string, Lazy<WordList>> Loaded = new(StringComparer.Ordinal);
    private readonly uint[] _places;

    private WordList(int words) => _places = new uint[(int)System.Numerics.BitOperations.RoundUpToPowerOf2((uint)Math.Max(16, words * 2))];

    /// <summary>The list of a language (<c>en</c>), or of proper names (<c>names</c>); read once.</summary>
    public static WordList Get(string name) => Loaded.GetOrAdd(name, n => new Lazy<WordList>(() => Read(n))).Value;

    /// <summary>The shipped bytes of a list; empty where there is none.</summary>
    public static byte[] Bytes(string name)
    {
        using Stream? stream = typeof(WordList).Assembly.GetManifestResourceStream($"Defaults/dictionary/{name}.br");
        byte[] bytes = new byte[stream?.Length ?? 0];
        stream?.ReadExactly(bytes);
        return bytes;
    }

    /// <summary>Hash of a folded word (FNV-1a, Fowler, Noll and Vo 1991, with a final mix).</summary>
    public static ulong Hash(ReadOnlySpan<char> folded)
    {
        ulong hash = 14695981039346656037;
        foreach (char c in folded)
        {
            hash = (hash ^ c) * 1099511628211;
        }

        hash ^= hash >> 32;
        hash *= 0x9e3779b97f4a7c15;
        return hash ^ (hash >> 29);
    }

    /// <summary>True for a word of the list.</summary>
    public bool Contains(ulong word) => _places[PlaceOf(word)] != 0;

    // Each word: how many letters it shares with the one before (below 'a'), then the others.
    private static WordList Read(string name)
    {
        using var packed = new MemoryStream(Bytes(name));
        using var brotli = new BrotliStream(packed, CompressionMode.Decompress);
        using var plain = new MemoryStream((int)packed.Length * 4);
        brotli.CopyTo(plain);
        ReadOnlySpan<byte> bytes = plain.GetBuffer().AsSpan(0, (int)plain.Length);
        var list = new WordList(bytes.Length - CountLetters(bytes));
        Span<char> word = stackalloc char[256];
        for (int i = 0; i < bytes.Length;)
        {
            int length = bytes[i++];
            while (i < bytes.Length && bytes[i] >= 'a')
            {
                word[length++] = (char)bytes[i++];
            }

            list.Add(Hash(word[..length]));
        }

        return list;
    }

    private static int CountLetters(ReadOnlySpan<byte> bytes)
    {
        int letters = 0;
        foreach (byte b in bytes)
        {
            letters += b >= 'a' ? 1 : 0;
        }

        return letters;
    }

    // Of the half of the hash that does not choose the place; never 0, which marks a free place.
    private static uint Fingerprint(ulong word) => (uint)(word >> 32) | 1;

    private void Add(ulong word) => _places[PlaceOf(word)] = Fingerprint(word);

    // The place that holds the word, or the free one where it would stand.
    private int PlaceOf(ulong word)
    {
        uint fingerprint = Fingerprint(word);
        int at = (int)(word & (ulong)(_places.Length - 1));
        while (_places[at] != 0 && _places[at] != fingerprint)
        {
            at = (at + 1) & (_places.Length - 1);
        }

        return at;
    }
}
