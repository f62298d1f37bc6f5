using System.Security.Cryptography;
using System.Text;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Privacy;

/// <summary>
/// Customers whose identifiers are to be left out of everything, known only by keyed hashes of their phone, address and
/// name. The list lies beside the key and is of no use without it.
/// </summary>
internal sealed class ForgottenCustomers
{
    private const string KeyLine = "key ";
    private const int MostWords = 6;
    private const int FewestDigits = 7;
    private readonly SortedSet<string> _identifiers;
    private readonly IdentityKey? _key;

    private ForgottenCustomers(IdentityKey? key, IEnumerable<string> identifiers, bool isForOtherKey)
    {
        (_key, _identifiers, IsForOtherKey) = (key, new SortedSet<string>(identifiers, StringComparer.Ordinal), isForOtherKey);
        Fingerprint = _identifiers.Count == 0 ? "none" : Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', _identifiers))))[..16];
    }

    /// <summary>Nobody.</summary>
    public static ForgottenCustomers None { get; } = new(null, [], false);

    /// <summary>True when nobody is on the list.</summary>
    public bool IsEmpty => _identifiers.Count == 0;

    /// <summary>True when the list was made with another key, which has been lost: it tells nothing any more.</summary>
    public bool IsForOtherKey { get; }

    /// <summary>Changes with the list; part of the key of staged files.</summary>
    public string Fingerprint { get; }

    /// <summary>Reads the list of an output folder.</summary>
    public static ForgottenCustomers Load(string path, IdentityKey key)
    {
        string[] lines = File.Exists(path) ? File.ReadAllLines(path) : [];
        bool other = lines.Length > 0 && lines[0] != KeyLine + key.Fingerprint;
        return new ForgottenCustomers(key, other ? [] : lines.Skip(1).Where(l => l.Length == IdentityKey.IdentifierLength), other);
    }

    /// <summary>The same with more identifiers.</summary>
    public ForgottenCustomers With(IEnumerable<string> identifiers) => new(_key, _identifiers.Concat(identifiers), false);

    /// <summary>Writes the list in one step.</summary>
    public void Save(string path)
    {
        File.WriteAllLines(path + ".new", [KeyLine + _key!.Fingerprint, .. _identifiers]);
        File.Move(path + ".new", path, overwrite: true);
    }

    /// <summary>True when a row's phone, address or name is on the list.</summary>
    public bool Holds(ReadOnlySpan<char> phone, ReadOnlySpan<char> address, ReadOnlySpan<char> name) =>
        !IsEmpty && Identifiers(_key!, phone, address, name).Any(_identifiers.Contains);

    /// <summary>Identifiers of a customer: of the phone, of the address with and without what follows its first comma, of the name with and without titles.</summary>
    public static IReadOnlyList<string> Identifiers(IdentityKey key, ReadOnlySpan<char> phone, ReadOnlySpan<char> address, ReadOnlySpan<char> name)
    {
        var found = new List<string>();
        Add(PlaceText.Digest(phone, [], []));
        Add(PlaceText.Digest([], address, []));
        int comma = address.IndexOf(',');
        Add(comma > 0 ? PlaceText.Digest([], address[..comma], []) : null);
        Add(PlaceText.Digest([], [], name));
        Add(PlaceText.Digest([], [], WithoutTitles(name)));
        return found;

        void Add(UInt128? digest)
        {
            if (digest is { } text && key.Identify(text) is var identifier && !found.Contains(identifier))
            {
                found.Add(identifier);
            }
        }
    }

    /// <summary>Identifiers of a text that may be a phone, an address or a name.</summary>
    public static IReadOnlyList<string> Identifiers(IdentityKey key, string text) =>
        text.Count(char.IsAsciiDigit) >= FewestDigits ? Identifiers(key, text, [], []) : Identifiers(key, [], text, text);

    /// <summary>True when any cell of a row, or any run of words or digits in its text, is on the list.</summary>
    public bool IsIn(IReadOnlyList<string> cells, string raw) => !IsEmpty && (cells.Any(c => c.Length > 2 && IsIn(c)) || IsWithin(raw));

    private bool IsIn(string text) => Identifiers(_key!, text).Any(_identifiers.Contains);

    private bool IsWithin(string raw)
    {
        var tokens = new TextTokens(raw);
        for (int first = 0; first < tokens.Count; first++)
        {
            for (int last = first; last < Math.Min(tokens.Count, first + MostWords); last++)
            {
                if (IsIn(raw[tokens[first].Start..tokens[last].End]))
                {
                    return true;
                }
            }
        }

        return false;
    }

    private static string WithoutTitles(ReadOnlySpan<char> name)
    {
        var words = new StringBuilder();
        foreach (Range range in name.SplitAny(" .,\t"))
        {
            string word = name[range].ToString();
            if (word.Length > 0 && !PersonalWords.Titles.Contains(WordList.Hash(TextFold.Fold(word))))
            {
                words.Append(word).Append(' ');
            }
        }

        return words.ToString();
    }
}
