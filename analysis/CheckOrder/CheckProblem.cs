namespace PartsSignal.Analysis.CheckOrder;

/// <summary>
/// Suspects of one call, of which at most one is at fault. What their odds leave over is "something else": no check
/// here finds it, so it keeps the plan from false certainty.
/// </summary>
internal sealed record CheckProblem
{
    /// <summary>Validates a problem.</summary>
    /// <exception cref="ArgumentException">A number is out of range, the odds sum to more than 1, or an opening has no minutes.</exception>
    public CheckProblem(
        IReadOnlyList<Suspect> suspects, IReadOnlyDictionary<string, double>? openingMinutes = null, bool inferLast = false, IReadOnlyList<(int First, int Then)>? mustPrecede = null)
    {
        Suspects = suspects;
        OpeningMinutes = openingMinutes ?? new Dictionary<string, double>();
        InferLast = inferLast;
        MustPrecede = mustPrecede ?? [];
        foreach (Suspect s in suspects)
        {
            bool sound = s.Probability is >= 0 and <= 1 && s.Minutes >= 0 && double.IsFinite(s.Minutes) && s.Sensitivity is > 0 and <= 1;
            if (!sound || (s.Opening is { } o && !OpeningMinutes.ContainsKey(o)))
            {
                throw new ArgumentException($"Suspect '{s.Name}' has odds, minutes, sensitivity or an opening out of range.", nameof(suspects));
            }
        }

        if (suspects.Sum(s => s.Probability) > 1 + 1e-9)
        {
            throw new ArgumentException("The odds of all suspects sum to more than 1.", nameof(suspects));
        }
    }

    /// <summary>The suspects.</summary>
    public IReadOnlyList<Suspect> Suspects { get; }

    /// <summary>Minutes of each opening work; paid once, with the first check behind it.</summary>
    public IReadOnlyDictionary<string, double> OpeningMinutes { get; }

    /// <summary>True: when all but one have been cleared, the last is taken for the fault without a check.</summary>
    public bool InferLast { get; }

    /// <summary>Pairs of places in the list: the first must be checked before the other.</summary>
    public IReadOnlyList<(int First, int Then)> MustPrecede { get; }

    /// <summary>
    /// Expected minutes of an order: each check's minutes, and its opening work if it is the first behind it, times the
    /// chance that the search gets that far.
    /// </summary>
    public double ExpectedMinutes(IReadOnlyList<int> order)
    {
        var open = new HashSet<string>(StringComparer.Ordinal);
        double minutes = 0, reached = 1;
        for (int place = 0; place < order.Count; place++)
        {
            Suspect suspect = Suspects[order[place]];
            if (InferLast && place == Suspects.Count - 1 && !suspect.AlwaysFirst)
            {
                break;
            }

            minutes += reached * (suspect.Minutes + (suspect.Opening is { } o && open.Add(o) ? OpeningMinutes[o] : 0));
            reached -= suspect.Finds;
        }

        return minutes;
    }
}

/// <summary>One thing that may be at fault, and what it takes to check it.</summary>
/// <param name="Name">Name of the check.</param>
/// <param name="Probability">Chance that it is the fault, 0 to 1.</param>
/// <param name="Minutes">Minutes the check takes once everything before it is open, 0 or more.</param>
internal sealed record Suspect(string Name, double Probability, double Minutes)
{
    /// <summary>Opening work it shares with others, for example a rear panel, or null if it needs none.</summary>
    public string? Opening { get; init; }

    /// <summary>Chance that the check sees the fault when it is there, above 0 up to 1. Default 1.</summary>
    public double Sensitivity { get; init; } = 1;

    /// <summary>Free or safety check: done before all others, whatever its odds.</summary>
    public bool AlwaysFirst { get; init; }

    /// <summary>Chance that this check ends the search.</summary>
    public double Finds => Probability * Sensitivity;
}
