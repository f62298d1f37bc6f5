namespace PartsSignal.Pipeline.Cleaning;

/// <summary>Reads what a supersession line means.</summary>
internal static class SupersessionKindText
{
    /// <summary><c>kit_part</c>, <c>alternative</c>, <c>no_longer_made</c> or <c>replaces</c>; without words: <c>replaces</c>, or <c>no_longer_made</c> where there is no new number. Null: the words are unknown.</summary>
    public static string? Read(ReadOnlySpan<char> cell, bool hasNew)
    {
        cell = cell.Trim();
        return cell.IsEmpty ? (hasNew ? "replaces" : "no_longer_made")
            : Has(cell, "kit") || Has(cell, "set of") ? "kit_part"
            : Has(cell, "alternativ") || Has(cell, "either") || Has(cell, "optional") || Has(cell, "equivalent") ? "alternative"
            : Has(cell, "no longer") || Has(cell, "no_longer") || Has(cell, "discontinued") || Has(cell, "obsolete") || Has(cell, "nla") || Has(cell, "end of") ? "no_longer_made"
            : Has(cell, "replac") || Has(cell, "supersed") || Has(cell, "new number") || Has(cell, "successor") ? "replaces"
            : null;
    }

    private static bool Has(ReadOnlySpan<char> cell, string word) => cell.Contains(word, StringComparison.OrdinalIgnoreCase);
}
