namespace PartsSignal.Pipeline.Cleaning;

/// <summary>Reads yes or no.</summary>
internal static class YesNoText
{
    private static readonly string[] Yes = ["yes", "y", "true", "t", "1", "x", "ja", "j", "oui", "si", "van", "\u2713", "\u2714"];
    private static readonly string[] No = ["no", "n", "false", "f", "0", "nein", "nee", "non", "-", "ordered", "order"];

    /// <summary>Yes, no, or false where the cell says neither.</summary>
    public static bool TryRead(ReadOnlySpan<char> cell, out bool yes)
    {
        cell = cell.Trim();
        yes = Has(Yes, cell);
        return yes || Has(No, cell);
    }

    private static bool Has(string[] words, ReadOnlySpan<char> cell)
    {
        foreach (string word in words)
        {
            if (cell.Equals(word, StringComparison.OrdinalIgnoreCase))
            {
                return true;
            }
        }

        return false;
    }
}

/// <summary>Reads whether a customer is a household or under contract.</summary>
internal static class CustomerKindText
{
    private static readonly string[] Contract = ["contract", "commercial", "business", "trade", "landlord", "company", "account", "estate", "launderette", "agency"];
    private static readonly string[] Household = ["household", "private", "domestic", "residential", "home", "retail", "consumer", "individual"];

    /// <summary><c>household</c>, <c>contract</c>, or <c>unknown</c>; null for an empty cell.</summary>
    public static string? Read(ReadOnlySpan<char> cell)
    {
        cell = cell.Trim();
        return cell.IsEmpty ? null
            : Has(Contract, cell) ? "contract"
            : Has(Household, cell) ? "household"
            : YesNoText.TryRead(cell, out bool contract) ? (contract ? "contract" : "household")
            : "unknown";
    }

    private static bool Has(string[] words, ReadOnlySpan<char> cell)
    {
        foreach (string word in words)
        {
            if (cell.Contains(word, StringComparison.OrdinalIgnoreCase))
            {
                return true;
            }
        }

        return false;
    }
}

/// <summary>Reads a size class.</summary>
internal static class SizeClassText
{
    /// <summary><c>small</c>, <c>medium</c>, <c>large</c> or <c>bulky</c>, or null for another word.</summary>
    public static string? Read(ReadOnlySpan<char> cell)
    {
        Span<char> lower = stackalloc char[12];
        cell = cell.Trim();
        if (cell.Length is 0 or > 12)
        {
            return null;
        }

        cell.ToLowerInvariant(lower);
        return lower[..cell.Length] switch
        {
            "s" or "small" or "xs" or "tiny" => "small",
            "m" or "medium" or "med" => "medium",
            "l" or "large" or "big" => "large",
            "xl" or "xxl" or "bulky" or "oversize" or "extra large" => "bulky",
            _ => null,
        };
    }
}

/// <summary>Reads what a supersession line means.</summary>
internal static class SupersessionKindText
{
    /// <summary><c>kit_part</c>, <c>alternative</c>, <c>no_longer_made</c> or <c>replaces</c>; without words: <c>replaces</c>, or <c>no_longer_made</c> where there is no new number. Null: the words are unknown.</summary>
    public static string? Read(ReadOnlySpan<char> cell, bool hasNew)
    {
        cell = cell.Trim();
        return cell.IsEmpty ? (hasNew ? "replaces" : "no_longer_made")
            : Has(cell, "kit") || Has(cell, "set of") ? "kit_part"
            : Has(cell, "alternativ") || Has(cell, "either") || Has(cell, "optional") || Has(cell, "also") || Has(cell, "equivalent") ? "alternative"
            : Has(cell, "no longer") || Has(cell, "no_longer") || Has(cell, "discontinued") || Has(cell, "obsolete") || Has(cell, "nla") || Has(cell, "end of") ? "no_longer_made"
            : Has(cell, "replac") || Has(cell, "supersed") || Has(cell, "new number") || Has(cell, "successor") ? "replaces"
            : null;
    }

    private static bool Has(ReadOnlySpan<char> cell, string word) => cell.Contains(word, StringComparison.OrdinalIgnoreCase);
}
