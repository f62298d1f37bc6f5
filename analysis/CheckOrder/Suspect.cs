namespace PartsSignal.Analysis.CheckOrder;

/// <summary>One thing that may be at fault, and what it takes to check it.</summary>
/// <param name="Name">Name of the check.</param>
/// <param name="Probability">Chance that it is the fault, 0 to 1.</param>
/// <param name="Minutes">Minutes the check takes once everything before it is open, 0 or more.</param>
internal sealed record Suspect(string Name, double Probability, double Minutes)
{
    /// <summary>Opening work it shares with others, for example a rear panel; null: needs none.</summary>
    public string? Opening { get; init; }

    /// <summary>Chance that the check sees the fault when it is there, above 0 up to 1. Default 1.</summary>
    public double Sensitivity { get; init; } = 1;

    /// <summary>Free or safety check: done before all others, whatever its odds.</summary>
    public bool AlwaysFirst { get; init; }

    /// <summary>Chance that this check ends the search.</summary>
    public double Finds => Probability * Sensitivity;
}
