namespace PartsSignal.Pipeline.Words;

/// <summary>Words that stand for one meaning.</summary>
/// <param name="Meaning">What they mean: a complaint kind, a component.</param>
/// <param name="Types">Appliance types they hold for; null: all.</param>
/// <param name="Stems">The words in order, lower case; one that ends in <c>*</c> matches every word that begins so.</param>
/// <param name="Order">Position in the table; the earlier wins a tie.</param>
public sealed record KeywordRule(string Meaning, IReadOnlySet<string>? Types, IReadOnlyList<string> Stems, int Order)
{
    /// <summary>True when the phrase holds for that type; an unknown type holds for all.</summary>
    public bool Holds(string? type) => Types is null || type is null || type == "other" || Types.Contains(type);
}
