namespace PartsSignal.Pipeline.Staging;

/// <summary>How many source rows make a group of staged rows: however a file is staged, its groups end at the same rows.</summary>
internal static class RowGroup
{
    /// <summary>Most rows of a group.</summary>
    public const int MostRows = 16_384;

    private const int MostCharacters = 1 << 22;

    /// <summary>True when a group of so many rows with so many characters takes no further one.</summary>
    public static bool IsFull(int rows, int characters) => rows >= MostRows || characters >= MostCharacters;
}
