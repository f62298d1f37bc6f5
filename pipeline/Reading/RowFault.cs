using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Reading;

/// <summary>Why a row cannot be used.</summary>
/// <param name="Field">Field of the kind, or the file's header; null: the row as a whole.</param>
/// <param name="Code">One of <see cref="ReasonCode"/>.</param>
/// <param name="Message">What is wrong, for people. Holds no cell of the row.</param>
/// <param name="Suggestion">What to do about it; null: nothing to say.</param>
internal sealed record RowFault(string? Field, string Code, string Message, string? Suggestion);
