namespace PartsSignal.Analysis.Prediction.Answers;

/// <summary>What answers take from a store and the results of its run, as rows.</summary>
/// <param name="Parts">Parts that fit a family, family by family, the most used first.</param>
/// <param name="ModelParts">Jobs on the very model that used a part.</param>
/// <param name="Companions">What is fitted together.</param>
/// <param name="Vans">What vans hold.</param>
/// <param name="Models">The model list.</param>
/// <param name="Risks">Risks of the next year.</param>
public sealed record StoreFacts(
    IReadOnlyList<(string Family, FamilyPart Part)> Parts,
    IReadOnlyList<(string Model, string Part, long Jobs)> ModelParts,
    IReadOnlyList<Companion> Companions,
    IReadOnlyList<VanPart> Vans,
    IReadOnlyList<KnownModel> Models,
    IReadOnlyList<YearRisk> Risks);
