namespace PartsSignal.Pipeline.Core;

/// <summary>Options, configuration or files that cannot be used. Lists every fault; the program prints one per line and exits with 2.</summary>
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

    /// <summary>The faults, one line each.</summary>
    public IReadOnlyList<string> Faults { get; }
}
