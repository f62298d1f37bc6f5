using System.Buffers;
using System.IO.Hashing;
using System.Runtime.InteropServices;
using System.Security.Cryptography;
using System.Text;
using Blake3;

namespace PartsSignal.Pipeline.Privacy;

/// <summary>
/// The secret that turns serials, phone numbers and addresses into identifiers: the same thing gets the same
/// identifier, and without the key nobody can tell from the identifier what it was or try all phone numbers. The hash is
/// BLAKE3 in its keyed mode (O'Connor, Aumasson, Neves and Wilcox-O'Hearn 2020), the first 96 bits of it.
/// </summary>
public sealed class IdentityKey
{
    /// <summary>Characters of an identifier.</summary>
    public const int IdentifierLength = 2 * ShownBytes;

    private const int KeyBytes = 32;
    private const int ShownBytes = 12;
    private const int ShortBytes = 256;

    // A hash that is begun anew each time costs more than one that is kept; it serves one thread.
    private readonly ThreadLocal<Hasher> _hash;

    /// <summary>Takes a key of 32 bytes.</summary>
    public IdentityKey(byte[] key)
    {
        if (key.Length != KeyBytes)
        {
            throw new ArgumentException($"An identity key has {KeyBytes} bytes.", nameof(key));
        }

        byte[] own = [.. key];
        _hash = new ThreadLocal<Hasher>(() => Hasher.NewKeyed(own));
        Fingerprint = Convert.ToHexStringLower(SHA256.HashData(key))[..16];
    }

    /// <summary>Tells one key from another without giving it away.</summary>
    public string Fingerprint { get; }

    /// <summary>Reads the key file, or makes it where there is none, readable by its owner only.</summary>
    /// <exception cref="InvalidDataException">The file holds no key.</exception>
    public static IdentityKey LoadOrMake(string path)
    {
        if (!File.Exists(path))
        {
            Make(path);
        }

        byte[] key = File.ReadAllBytes(path);
        return key.Length == KeyBytes
            ? new IdentityKey(key)
            : throw new InvalidDataException($"{path} holds no identity key. Restore it from a copy, or delete it together with the store to start anew.");
    }

    /// <summary>Identifier of a text within a realm; 24 hex digits. The same text gives other identifiers in other realms.</summary>
    public string Identify(string realm, ReadOnlySpan<char> text)
    {
        Span<char> identifier = stackalloc char[IdentifierLength];
        Identify(realm, text, identifier);
        return new string(identifier);
    }

    /// <summary>The same without a string: fills <see cref="IdentifierLength"/> characters.</summary>
    public void Identify(string realm, ReadOnlySpan<char> text, Span<char> identifier)
    {
        int most = Encoding.UTF8.GetMaxByteCount(realm.Length + 1 + text.Length);
        byte[]? rented = most <= ShortBytes ? null : ArrayPool<byte>.Shared.Rent(most);
        Span<byte> bytes = rented ?? stackalloc byte[ShortBytes];
        int n = Encoding.UTF8.GetBytes(realm, bytes);
        bytes[n++] = 0;
        n += Encoding.UTF8.GetBytes(text, bytes[n..]);
        Hash(bytes[..n], identifier);
        if (rented is not null)
        {
            // It held a customer's details.
            ArrayPool<byte>.Shared.Return(rented, clearArray: true);
        }
    }

    /// <summary>
    /// Identifier of a long text, for telling rows apart: the text is first drawn together to 128 bits (XXH3, Collet 2019),
    /// which is several times as quick and as good as long as nobody writes rows in order to have them taken for others.
    /// </summary>
    public void IdentifyLong(string realm, ReadOnlySpan<char> text, Span<char> identifier)
    {
        Span<byte> bytes = stackalloc byte[ShortBytes];
        int n = Encoding.UTF8.GetBytes(realm, bytes);
        bytes[n++] = 0;
        n += XxHash128.Hash(MemoryMarshal.AsBytes(text), bytes[n..]);
        Hash(bytes[..n], identifier);
    }

    private void Hash(ReadOnlySpan<byte> bytes, Span<char> identifier)
    {
        Span<byte> hash = stackalloc byte[ShownBytes];
        Hasher keyed = _hash.Value!;
        keyed.Update(bytes);
        keyed.Finalize(hash);

        // It would hold the end of a customer's details until the next call.
        keyed.Reset();
        Convert.TryToHexStringLower(hash, identifier, out _);
    }

    private static void Make(string path)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(path))!);
        string fresh = path + ".new";
        File.Delete(fresh);
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        using (var file = new FileStream(fresh, options))
        {
            file.Write(RandomNumberGenerator.GetBytes(KeyBytes));
            file.Flush(flushToDisk: true);
        }

        // A key file cut short by a kill would lock the shop out of its own history.
        File.Move(fresh, path, overwrite: false);
    }
}
