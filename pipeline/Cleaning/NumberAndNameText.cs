namespace PartsSignal.Pipeline.Cleaning;

/// <summary>Reads a part's number and its name from one cell: <c>376.7460 - Drum roller</c>, <c>Drum roller: 376.7460</c>.</summary>
internal static class NumberAndNameText
{
    private const int FewestLetters = 4;
    private const int FewestDigits = 2;
    private static readonly string[] Marks = [" - ", " \u2013 ", " \u2014 ", ": ", " | ", " / "];

    /// <summary>True where a mark stands between a number without blanks and a name without digits.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="number">The number.</param>
    /// <param name="name">The name.</param>
    public static bool TryRead(string? cell, out string number, out string name)
    {
        (number, name) = ("", "");
        foreach (string mark in cell is null ? [] : Marks)
        {
            int at = cell!.IndexOf(mark, StringComparison.Ordinal);
            if (at > 0)
            {
                (string left, string right) = (cell[..at].Trim(), cell[(at + mark.Length)..].Trim());
                bool isNumberFirst = IsNumber(left) && IsName(right);
                if (isNumberFirst || (IsName(left) && IsNumber(right)))
                {
                    (number, name) = isNumberFirst ? (left, right) : (right, left);
                    return true;
                }
            }
        }

        return false;
    }

    private static bool IsNumber(string text) => text.Count(char.IsAsciiDigit) >= FewestDigits && !text.Contains(' ', StringComparison.Ordinal);

    private static bool IsName(string text) => text.Count(char.IsLetter) >= FewestLetters && !text.AsSpan().ContainsAnyInRange('0', '9');
}
