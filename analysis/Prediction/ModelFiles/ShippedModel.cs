using PartsSignal.Analysis.Prediction.LogOdds;

namespace PartsSignal.Analysis.Prediction.ModelFiles;

/// <summary>The model that answers: a predictor, its temperature, the thresholds of its sets, and the counts behind every answer.</summary>
public sealed record ShippedModel : IPredictor
{
    /// <summary>Version of the file form.</summary>
    public const int Version = 3;

    /// <summary>Name of the contender that won.</summary>
    public required string Contender { get; init; }

    /// <summary>Last day whose closed jobs it learned from, or null if there is none.</summary>
    public required DateOnly? LearnedTo { get; init; }

    /// <summary>Jobs it learned from.</summary>
    public required int Jobs { get; init; }

    /// <summary>The predictor, before the temperature.</summary>
    public required IPredictor Predictor { get; init; }

    /// <summary>Counts from all jobs down to this model: the evidence shown beside the odds.</summary>
    public required BackOffModel Counts { get; init; }

    /// <summary>Temperature, above 0.</summary>
    public required double Temperature { get; init; }

    /// <summary>Thresholds of the 80 % sets.</summary>
    public required CarryLimits Carry80 { get; init; }

    /// <summary>Thresholds of the 95 % sets.</summary>
    public required CarryLimits Carry95 { get; init; }

    /// <summary>Reads the type of appliance from the complaint where it is not told, or null if the shop's jobs don't tell types apart.</summary>
    internal TypeReader? Types { get; init; }

    /// <inheritdoc/>
    public IReadOnlyList<string> Needs => Predictor.Needs;

    /// <inheritdoc/>
    public double[] Odds(Call call) => TemperatureScaling.Apply(TypeReader.Over(Predictor, Types).Odds(call), Temperature);

    /// <summary>Types of appliance a call may be about, likeliest first; empty where the call tells its type or no type can be read.</summary>
    public IReadOnlyList<(string Type, double Odds)> TypesOf(Call call) => Types is not null && TypeReader.Concerns(call) ? Types.Of(call) : [];
}
