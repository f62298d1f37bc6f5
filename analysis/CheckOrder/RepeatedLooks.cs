namespace PartsSignal.Analysis.CheckOrder;

/// <summary>One look in a search where a look can miss the fault.</summary>
/// <param name="Suspect">Place in the list.</param>
/// <param name="ExpectedMinutes">Expected minutes up to and with this look.</param>
/// <param name="Found">Chance that the fault is found by then.</param>
public sealed record Look(int Suspect, double ExpectedMinutes, double Found);

/// <summary>
/// Order of repeated, independent looks: next the one with the largest p (1-s)^m s / c, where m counts the looks already
/// taken there (Black 1965; Matula 1964). The same meter test done again is no independent look.
/// </summary>
public static class RepeatedLooks
{
    /// <summary>The first <paramref name="looks"/> looks; equal worth goes to the earlier suspect.</summary>
    public static IReadOnlyList<Look> Order(IReadOnlyList<Suspect> suspects, int looks)
    {
        double[] left = [.. suspects.Select(s => s.Probability)];
        var order = new List<Look>(looks);
        double minutes = 0, found = 0;
        for (int n = 0; n < looks && left.Length > 0; n++)
        {
            int next = 0;
            for (int i = 1; i < left.Length; i++)
            {
                next = Worth(suspects[i], left[i]) > Worth(suspects[next], left[next]) + 1e-15 ? i : next;
            }

            minutes += suspects[next].Minutes * (1 - found);
            found += left[next] * suspects[next].Sensitivity;
            left[next] *= 1 - suspects[next].Sensitivity;
            order.Add(new Look(next, minutes, found));
        }

        return order;
    }

    private static double Worth(Suspect suspect, double left) =>
        suspect.Minutes == 0 ? double.PositiveInfinity : left * suspect.Sensitivity / suspect.Minutes;
}
