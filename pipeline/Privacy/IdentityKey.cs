using System.Buffers.Text;
using System.IO.Hashing;
using System.Runtime.InteropServices;
using System.Security.Cryptography;
using System.Text;
using PartsSignal.Analysis.CrossReference;

namespace PartsSignal.Pipeline.Privacy;

/// <summary>
/// The secret that turns serials, phone numbers and addresses into identifiers: the same thing gets the same
/// identifier, and without the key nobody can tell from the identifier what it was or try all phone numbers. A text is
/// drawn together to 128 bits (XXH3, Collet 2019) and they are enciphered as one block (AES-256, FIPS 197); the first 72
/// bits of that are the identifier: that any two of a hundred million things share one has a chance of one in a million.
/// Two steps, because whole groups of rows are enciphered at once. The text is short, because the engine keeps texts of
/// up to 12 bytes within its rows.
/// </summary>
internal sealed class IdentityKey
{
    /// <summary>Characters of an identifier.</summary>
    public const int IdentifierLength = 12;

    private const int KeyBytes = 32;
    private const int BlockBytes = 16;
    private const int ShownBytes = 9;
    private readonly ThreadLocal<Aes> _cipher;

    /// <summary>Takes a key of 32 bytes.</summary>
    public IdentityKey(byte[] key)
    {
        if (key.Length != KeyBytes)
        {
            throw new ArgumentException($"An identity key has {KeyBytes} bytes.", nameof(key));
        }

        byte[] own = [.. key];
        _cipher = new ThreadLocal<Aes>(() => Cipher(own));
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
            : throw new InvalidDataException($"{path} holds no identity key. Restore it from a copy, or delete it: a new key is made, and every file is read again.");
    }

    /// <summary>A text drawn together; no secret is in it, and it never leaves the memory of the program as it is.</summary>
    public static UInt128 Digest(IdentityRealm realm, ReadOnlySpan<char> text) => XxHash128.HashToUInt128(MemoryMarshal.AsBytes(text), realm.Seed);

    /// <summary>Identifier of a digest: 12 characters of the base64url alphabet (RFC 4648), with a dot for the hyphen, which a spreadsheet would take for the start of a formula.</summary>
    public string Identify(UInt128 digest)
    {
        Span<char> identifier = stackalloc char[IdentifierLength];
        Identify([digest], identifier);
        return new string(identifier);
    }

    /// <summary>Identifiers of many digests, one after the other.</summary>
    /// <param name="digests">The digests; of no use afterwards.</param>
    /// <param name="identifiers">Room for <see cref="IdentifierLength"/> characters each.</param>
    public void Identify(Span<UInt128> digests, Span<char> identifiers)
    {
        Span<byte> blocks = MemoryMarshal.AsBytes(digests);
        _cipher.Value!.EncryptEcb(blocks, blocks, PaddingMode.None);
        for (int i = 1; i < digests.Length; i++)
        {
            blocks.Slice(i * BlockBytes, ShownBytes).CopyTo(blocks[(i * ShownBytes)..]);
        }

        int length = Base64Url.EncodeToChars(blocks[..(digests.Length * ShownBytes)], identifiers);
        identifiers[..length].Replace('-', '.');
    }

    private static Aes Cipher(byte[] key)
    {
        var aes = Aes.Create();
        aes.Key = key;
        return aes;
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

/// <summary>Domain separator for hashing: the same text in two realms gets different identifiers.</summary>
internal sealed class IdentityRealm
{
    private IdentityRealm(string name) => (Name, Seed) = (name, unchecked((long)XxHash3.HashToUInt64(Encoding.UTF8.GetBytes(name))));

    /// <summary>Serials of appliances.</summary>
    public static IdentityRealm Serial { get; } = new("serial");

    /// <summary>Phone numbers.</summary>
    public static IdentityRealm Phone { get; } = new("phone");

    /// <summary>Addresses.</summary>
    public static IdentityRealm Address { get; } = new("address");

    /// <summary>Names of customers.</summary>
    public static IdentityRealm Customer { get; } = new("name");

    /// <summary>Numbers of jobs and orders that hold more than a code.</summary>
    public static IdentityRealm Document { get; } = new("document");

    /// <summary>Vans that are named after someone.</summary>
    public static IdentityRealm Van { get; } = new("van");

    /// <summary>Whole rows of a source file.</summary>
    public static IdentityRealm Row { get; } = new("row");

    /// <summary>The realm's name.</summary>
    public string Name { get; }

    /// <summary>What sets the realm's digests apart.</summary>
    internal long Seed { get; }

    /// <inheritdoc/>
    public override string ToString() => Name;
}

/// <summary>The identifier an appliance gets from its serial: letters and digits of the serial, within its brand.</summary>
internal static class SerialKey
{
    private const int LeastCharacters = 3;

    /// <summary>The identifier, or null if there is no serial.</summary>
    /// <param name="key">The shop's key.</param>
    /// <param name="brand">Brand, or null if not known.</param>
    /// <param name="serial">Serial as typed.</param>
    public static string? Create(IdentityKey key, string? brand, string? serial) => Digest(brand, serial) is { } digest ? key.Identify(digest) : null;

    /// <summary>The digest that <see cref="IdentityKey"/> makes the identifier of, or null if there is no serial.</summary>
    public static UInt128? Digest(ReadOnlySpan<char> brand, ReadOnlySpan<char> serial) => Digest(brand, serial, out _);

    /// <summary>The same; a short serial, of one or two characters, tells appliances apart only if a register lists it.</summary>
    public static UInt128? Digest(ReadOnlySpan<char> brand, ReadOnlySpan<char> serial, out bool isShort)
    {
        int most = brand.Length + serial.Length + 1;
        Span<char> text = most <= 256 ? stackalloc char[most] : new char[most];
        int before = CompactKey.From(brand, text);
        text[before++] = '/';
        int length = CompactKey.From(serial, text[before..]);
        isShort = length is > 0 and < LeastCharacters;
        return length == 0 ? null : IdentityKey.Digest(IdentityRealm.Serial, text[..(before + length)]);
    }
}
