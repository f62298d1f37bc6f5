namespace PartsSignal.Pipeline.Understanding;

/// <summary>What the files of a shop look like together.</summary>
/// <param name="Tables">Every table, in the order of the files.</param>
/// <param name="Questions">What only the shop can say, the most consequential first.</param>
/// <param name="MoreQuestions">How many more there would be.</param>
internal sealed record ShopInspection(IReadOnlyList<Inspection> Tables, IReadOnlyList<ReadingQuestion> Questions, int MoreQuestions);
