namespace PartsSignal.Pipeline.Privacy;

/// <summary>What stands for the name of one of the shop's people, where settings want initials.</summary>
internal static class NameInitials
{
    /// <summary>One letter per word; of a single word the first two, since so many names share the first.</summary>
    public static string Of(string name)
    {
        string[] words = name.Split([' ', '.', '-', ','], StringSplitOptions.RemoveEmptyEntries);
        return words.Length == 0 ? name
            : words.Length == 1 ? words[0][..Math.Min(2, words[0].Length)].ToUpperInvariant()
            : string.Concat(words.Select(w => char.ToUpperInvariant(w[0])));
    }
}
