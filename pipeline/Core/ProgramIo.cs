namespace PartsSignal.Pipeline.Core;

/// <summary>Streams and clock of the process, passed to every command's constructor.</summary>
/// <param name="Out">Standard output: answers.</param>
/// <param name="Error">Standard error: faults and progress.</param>
/// <param name="Clock">The clock.</param>
internal sealed record ProgramIo(TextWriter Out, TextWriter Error, TimeProvider Clock);

/// <summary>Exit codes of the program.</summary>
internal static class ExitCode
{
    /// <summary>Done.</summary>
    public const int Done = 0;

    /// <summary>Failed: the reason is on stderr.</summary>
    public const int Failed = 1;

    /// <summary>Bad input or options: every fault is on stderr.</summary>
    public const int BadInput = 2;
}
