namespace PartsSignal.EndToEnd.Tests.Privacy.Plants;

/// <summary>Something personal, put into one cell of a shop's files.</summary>
/// <param name="Form">What it is and how it is typed, for the report.</param>
/// <param name="Typed">As typed.</param>
/// <param name="Words">Words that must not be found again.</param>
/// <param name="Digits">Digits that must not be found again, or empty.</param>
/// <param name="Customer">Name for the customer column of its row, or null for any.</param>
/// <param name="HeldOut">True for a form that the rules were not tuned on.</param>
internal sealed record Plant(string Form, string Typed, IReadOnlyList<string> Words, string Digits, string? Customer, bool HeldOut)
{
    /// <summary>Short codes that must not be found again standing alone, whatever stands between their letters and digits.</summary>
    public IReadOnlyList<string> Codes { get; init; } = [];
}
