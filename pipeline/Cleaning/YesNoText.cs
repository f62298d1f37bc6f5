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
