using PartsSignal.Pipeline.Rejects;

namespace PartsSignal.Pipeline.Staging;

/// <summary>Successive rows of a file whose good ones are staged.</summary>
/// <param name="Count">How many they were.</param>
/// <param name="Refused">The others, with their places among them, in order.</param>
internal sealed record CleanedRows(int Count, IReadOnlyList<(int At, RejectedRow Row)> Refused);
