namespace PartsSignal.Pipeline.Cleaning;

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
