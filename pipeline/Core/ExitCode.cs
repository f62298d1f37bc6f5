namespace PartsSignal.Pipeline.Core;

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
