namespace PartsSignal.Pipeline.Staging;

/// <summary>Gives the same string for the same characters, for columns that repeat themselves; bounded.</summary>
internal sealed class TextPool
{
    private const int MaxTexts = 20_000;
    private const int MaxLength = 64;
    private readonly HashSet<string> _texts = new(StringComparer.Ordinal);
    private readonly HashSet<string>.AlternateLookup<ReadOnlySpan<char>> _lookup;

    public TextPool() => _lookup = _texts.GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>The characters as a string.</summary>
    public string Get(ReadOnlySpan<char> text)
    {
        if (text.Length > MaxLength)
        {
            return text.ToString();
        }

        if (_lookup.TryGetValue(text, out string? known))
        {
            return known;
        }

        string made = text.ToString();
        if (_texts.Count < MaxTexts)
        {
            _texts.Add(made);
        }

        return made;
    }
}
