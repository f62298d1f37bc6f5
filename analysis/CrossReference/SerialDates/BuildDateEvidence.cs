namespace PartsSignal.Analysis.CrossReference.SerialDates;

/// <summary>What else is known when a date code is read.</summary>
/// <param name="SeenOn">Day of the job.</param>
/// <param name="Launch">First day the model was made; null: not known.</param>
/// <param name="Stop">Last day the model was made; null: not known.</param>
/// <param name="OldestYears">Older appliances are not believed, in years.</param>
public sealed record BuildDateEvidence(DateOnly SeenOn, DateOnly? Launch, DateOnly? Stop, int OldestYears = 40)
{
    /// <summary>Why an interval cannot be the build date; null: it can.</summary>
    public string? Against(BuildInterval built)
    {
        ArgumentNullException.ThrowIfNull(built);
        return built.From > SeenOn ? "after service date"
            : built.To < Launch ? "before model launch"
            : built.From > Stop ? "after model stop"
            : built.To < SeenOn.AddYears(-OldestYears) ? "older than believed"
            : null;
    }

    /// <summary>The intervals nothing speaks against.</summary>
    public IReadOnlyList<BuildInterval> Narrow(IReadOnlyList<BuildInterval> candidates) => [.. candidates.Where(c => Against(c) is null)];

    /// <summary>
    /// Chances of the candidates by a prior on the appliance's age: w_i = p(age_i) / sum p(age_j); equal where the
    /// prior gives none a chance.
    /// </summary>
    /// <param name="candidates">One or more intervals.</param>
    /// <param name="prior">Relative chance of an age in whole years, 0 or more; from units of the same kind whose age is certain.</param>
    public IReadOnlyList<double> Weigh(IReadOnlyList<BuildInterval> candidates, Func<int, double> prior)
    {
        double[] chances = [.. candidates.Select(c => prior(Math.Max(0, (SeenOn.DayNumber - c.Middle.DayNumber) * 4 / 1461)))];
        double all = chances.Sum();
        return [.. chances.Select(c => all > 0 ? c / all : 1.0 / candidates.Count)];
    }
}
