namespace PartsSignal.Analysis.Prediction;

/// <summary>A job on the same unit that was closed before the call.</summary>
/// <param name="DaysAgo">Days between its closing and the call, 1 or more.</param>
/// <param name="Need">What it needed; null: nobody knows.</param>
/// <param name="ComplaintKind">Its complaint kind.</param>
public sealed record EarlierVisit(int DaysAgo, string? Need, string ComplaintKind)
{
    /// <summary>Reads visits written as <c>days:need:kind</c>, parted by blanks, the need empty where nobody knows it.</summary>
    public static IReadOnlyList<EarlierVisit> Parse(string? text) =>
        string.IsNullOrEmpty(text)
            ? []
            : [.. text.Split(' ').Select(v => v.Split(':')).Select(p => new EarlierVisit(
                int.Parse(p[0], System.Globalization.CultureInfo.InvariantCulture), p[1].Length == 0 ? null : p[1], p[2]))];
}
