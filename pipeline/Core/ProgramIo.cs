namespace PartsSignal.Pipeline.Core;

/// <summary>What a command may touch of the outside world; every command takes it in its constructor.</summary>
/// <param name="Out">Answers.</param>
/// <param name="Error">Faults and progress.</param>
/// <param name="Clock">The time.</param>
internal sealed record ProgramIo(TextWriter Out, TextWriter Error, TimeProvider Clock);

/// <summary>What the program tells its caller.</summary>
internal static class ExitCode
{
    /// <summary>Done.</summary>
    public const int Done = 0;

    /// <summary>Failed: the reason is on stderr.</summary>
    public const int Failed = 1;

    /// <summary>Bad input or options: every fault is on stderr.</summary>
    public const int BadInput = 2;
}
