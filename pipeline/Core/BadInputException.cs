namespace PartsSignal.Pipeline.Core;

/// <summary>Options, configuration or files that cannot be used. Carries every fault found; the program prints one line each and ends with 2.</summary>
internal class BadInputException : Exception
{
    /// <summary>All faults, each saying what is wrong, where, and what to do.</summary>
    public BadInputException(IReadOnlyList<string> faults)
        : base(string.Join(Environment.NewLine, faults)) => Faults = faults;

    /// <summary>One fault.</summary>
    public BadInputException(string fault)
        : this([fault])
    {
    }

    /// <summary>The faults, a line each.</summary>
    public IReadOnlyList<string> Faults { get; }
}
