using System.Collections.Concurrent;
using System.IO.Compression;

namespace PartsSignal.Pipeline.Privacy;

/// <summary>
/// A shipped list of folded words, as <c>dictionary/build.mjs</c> makes them, held as 64-bit hashes of the words: that any
/// two of ten million words share one has a chance of one in 400,000.
/// </summary>
internal sealed class WordList
{
    private static readonly ConcurrentDictionary<string, Lazy<WordList>> Loaded = new(StringComparer.Ordinal);
    private readonly ulong[] _places;

    private WordList(IReadOnlyCollection<ulong> words)
    {
        _places = new ulong[(int)System.Numerics.BitOperations.RoundUpToPowerOf2((uint)Math.Max(16, words.Count * 2))];
        foreach (ulong word in words)
        {
            int at = (int)(word & (ulong)(_places.Length - 1));
            while (_places[at] != 0 && _places[at] != word)
            {
                at = (at + 1) & (_places.Length - 1);
            }

            _places[at] = word;
        }
    }

    /// <summary>The list of a language (<c>en</c>), or of proper names (<c>names</c>); read once.</summary>
    public static WordList Get(string name) => Loaded.GetOrAdd(name, n => new Lazy<WordList>(() => Read(n))).Value;

    /// <summary>The shipped bytes of a list; empty where there is none.</summary>
    public static byte[] Bytes(string name)
    {
        using Stream? stream = typeof(WordList).Assembly.GetManifestResourceStream($"Defaults/dictionary/{name}.br");
        using var copy = new MemoryStream();
        stream?.CopyTo(copy);
        return copy.ToArray();
    }

    /// <summary>Hash of a folded word, never 0 (FNV-1a, Fowler, Noll and Vo 1991, with a final mix).</summary>
    public static ulong Hash(ReadOnlySpan<char> folded)
    {
        ulong hash = 14695981039346656037;
        foreach (char c in folded)
        {
            hash = (hash ^ c) * 1099511628211;
        }

        hash ^= hash >> 32;
        hash *= 0x9e3779b97f4a7c15;
        return (hash ^ (hash >> 29)) | 1;
    }

    /// <summary>True for a word of the list.</summary>
    public bool Contains(ulong word)
    {
        for (int at = (int)(word & (ulong)(_places.Length - 1)); _places[at] != 0; at = (at + 1) & (_places.Length - 1))
        {
            if (_places[at] == word)
            {
                return true;
            }
        }

        return false;
    }

    // Each word: how many letters it shares with the one before (below 'a'), then the others.
    private static WordList Read(string name)
    {
        using var packed = new MemoryStream(Bytes(name));
        using var brotli = new BrotliStream(packed, CompressionMode.Decompress);
        using var plain = new MemoryStream();
        brotli.CopyTo(plain);
        ReadOnlySpan<byte> bytes = plain.GetBuffer().AsSpan(0, (int)plain.Length);
        var words = new List<ulong>(bytes.Length / 4);
        Span<char> word = stackalloc char[256];
        for (int i = 0; i < bytes.Length;)
        {
            int length = bytes[i++];
            while (i < bytes.Length && bytes[i] >= 'a')
            {
                word[length++] = (char)bytes[i++];
            }

            words.Add(Hash(word[..length]));
        }

        return new WordList(words);
    }
}
