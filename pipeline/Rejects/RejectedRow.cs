using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Rejects;

/// <summary>A refused row.</summary>
/// <param name="Line">Its line.</param>
/// <param name="Fault">Why.</param>
/// <param name="Cells">Its cells; empty where it could not be cut.</param>
/// <param name="Raw">Its text in the file.</param>
/// <param name="MayBeFooter">True when it would count as a footer, were no good row behind it.</param>
internal sealed record RejectedRow(int Line, RowFault Fault, IReadOnlyList<string> Cells, string Raw, bool MayBeFooter);
