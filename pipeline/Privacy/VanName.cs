using System.Globalization;
using System.Text;
using PartsSignal.Pipeline.Config;

namespace PartsSignal.Pipeline.Privacy;

/// <summary>
/// A van that is named after someone, where the shop's people are kept by initials. Its name in the job log, in a count and in the
/// settings must become the same label, and two vans with the same initials two labels. So a file is staged with the
/// initials and an identifier of the name, and the label is chosen when all files are known (<see cref="VanLabels"/>).
/// </summary>
internal static class VanName
{
    private const char Mark = '\u001f';
    private const WordClass Ordinary = WordClass.Function | WordClass.Common | WordClass.Own;

    /// <summary>The initials with an identifier behind, or the same instance for a van that is not named after anyone.</summary>
    /// <param name="van">A van's name, as typed.</param>
    /// <param name="key">The shop's key.</param>
    public static string Key(string van, IdentityKey key)
    {
        string initials = WithInitials(van);
        return ReferenceEquals(initials, van) ? van : initials + Mark + key.Identify(IdentityKey.Digest(IdentityRealm.Van, van.Trim().ToUpperInvariant()));
    }

    /// <summary>The initials of a key, or null for a name that stands as typed.</summary>
    public static string? InitialsOf(string key) => key.IndexOf(Mark, StringComparison.Ordinal) is >= 0 and int at ? key[..at] : null;

    /// <summary>
    /// The name with initials for each run of words that holds a listed given name or surname: <c>Tilly Ebbersley</c> is <c>TE</c>,
    /// <c>Tilly's van</c> is <c>TI van</c>. Digits and the words that everybody needs belong to no such run.
    /// </summary>
    public static string WithInitials(string van)
    {
        var tokens = new TextTokens(van);
        StringBuilder? text = null;
        int written = 0;
        for (int i = 0; i < tokens.Count; i++)
        {
            int first = i;
            bool listed = false;
            while (i < tokens.Count && MayBelongToName(tokens[i]))
            {
                listed |= tokens[i].FoldedLength > 1 && IsListed(tokens, i);
                i++;
            }

            if (listed)
            {
                (int start, int end) = (tokens[first].Start, tokens[i - 1].End);
                (text ??= new StringBuilder()).Append(van, written, start - written).Append(NameInitials.Of(van[start..end]));
                written = end;
            }
        }

        return text is null ? van : text.Append(van, written, van.Length - written).ToString();
    }

    private static bool MayBelongToName(TextToken token) => token.Kind == TokenKind.Word && !token.Is(Ordinary);

    // A possessive counts as its name.
    private static bool IsListed(TextTokens tokens, int i)
    {
        WordList names = WordList.Get("names");
        ReadOnlySpan<char> folded = tokens.Folded(i);
        return names.Contains(tokens[i].Hash) || (folded.Length > 3 && folded[^1] == 's' && names.Contains(WordList.Hash(folded[..^1])));
    }
}

/// <summary>The labels of a shop's vans that are named after someone.</summary>
/// <param name="Labels">The label of each key.</param>
internal sealed record VanLabels(IReadOnlyDictionary<string, string> Labels)
{
    /// <summary>No van is named after anyone.</summary>
    public static VanLabels None { get; } = new(new Dictionary<string, string>());

    /// <summary>Initials, with a number behind where several vans have them or another van is called so.</summary>
    /// <param name="keys">The vans of all files and of the settings, as <see cref="VanName.Key"/> makes them.</param>
    public static VanLabels Create(IEnumerable<string> keys)
    {
        var all = keys.ToHashSet(StringComparer.Ordinal);
        var labels = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (IGrouping<string, string> group in all.Where(k => VanName.InitialsOf(k) is not null).GroupBy(k => VanName.InitialsOf(k)!, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            string[] vans = [.. group.Order(StringComparer.Ordinal)];
            bool numbered = vans.Length > 1 || all.Contains(group.Key);
            int number = 0;
            foreach (string van in vans)
            {
                string label = group.Key;
                while (numbered && (label == group.Key || all.Contains(label)))
                {
                    label = string.Create(CultureInfo.InvariantCulture, $"{group.Key} {++number}");
                }

                labels.Add(van, label);
            }
        }

        return new VanLabels(labels);
    }

    /// <summary>The settings' vans and their crews as the store calls them. A van may stand there by its name or by its label.</summary>
    /// <param name="vans">As the settings list them.</param>
    /// <param name="key">The shop's key.</param>
    public IReadOnlyList<ShopVan> Name(IReadOnlyList<ShopVan> vans, IdentityKey key) =>
    [
        .. vans.Select(v => v with { Van = Of(VanName.Key(v.Van, key)), Technicians = [.. v.Technicians.Select(NameInitials.Of)] }).DistinctBy(v => v.Van),
    ];

    private string Of(string key) => Labels.GetValueOrDefault(key) ?? VanName.InitialsOf(key) ?? key;
}
