namespace PartsSignal.Pipeline.Core;

/// <summary>What a command may touch of the outside world; every command takes it in its constructor.</summary>
/// <param name="Out">Answers.</param>
/// <param name="Error">Faults and progress.</param>
/// <param name="Clock">The time.</param>
internal sealed record ProgramIo(TextWriter Out, TextWriter Error, TimeProvider Clock);
