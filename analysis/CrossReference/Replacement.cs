namespace PartsSignal.Analysis.CrossReference;

/// <summary>A number that stands for another today.</summary>
/// <param name="Number">The number to order.</param>
/// <param name="Quantity">Pieces of it per old piece.</param>
/// <param name="Via">Weakest link on the way: an alternative anywhere makes it an alternative, else a kit anywhere a kit part.</param>
public sealed record Replacement(string Number, int Quantity, SupersessionKind Via);

/// <summary>What stands for a number.</summary>
/// <param name="Number">The number asked for.</param>
/// <param name="Replacements">Its current numbers in ordinal order; itself alone when nothing replaces it or it lies on a cycle.</param>
/// <param name="InCycle">True: the list contradicts itself about this number.</param>
public sealed record Resolution(string Number, IReadOnlyList<Replacement> Replacements, bool InCycle);
