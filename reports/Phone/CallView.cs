using PartsSignal.Analysis.Prediction.Answers;

namespace PartsSignal.Reports.Phone;

/// <summary>What was asked, as typed; empty texts: not told.</summary>
public sealed record AskedQuestion(string Model, string Complaint, string Type, double? Age);

/// <summary>What a page about one call shows: a question to the live predictor and its answer.</summary>
/// <param name="Shop">Name of the shop.</param>
/// <param name="DataUpTo">Last day covered by the data, or null if not known.</param>
/// <param name="Asked">What was asked, to be shown again.</param>
/// <param name="Answer">The answer, or null if nothing was asked or it could not be answered.</param>
public sealed record CallView(string Shop, DateOnly? DataUpTo, AskedQuestion Asked, Answer? Answer)
{
    /// <summary>Why the question could not be answered; empty if it could.</summary>
    public IReadOnlyList<string> Faults { get; init; } = [];

    /// <summary>Appliance types of the shop's own.</summary>
    public IReadOnlyList<string> OwnTypes { get; init; } = [];

    /// <summary>What to tell when the data ends long ago, or null.</summary>
    public string? Old { get; init; }
}
