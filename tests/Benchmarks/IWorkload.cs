namespace PartsSignal.Benchmarks;

/// <summary>One measured piece of work; found by type, run by name.</summary>
public interface IWorkload
{
    /// <summary>Name on the command line, for example van-plan.</summary>
    string Name { get; }

    /// <summary>Prepares the input; not measured.</summary>
    void Prepare(int size);

    /// <summary>Default size, in the unit of <see cref="Unit"/>.</summary>
    int DefaultSize { get; }

    /// <summary>What the size counts, for example jobs.</summary>
    string Unit { get; }

    /// <summary>The measured work.</summary>
    /// <returns>What came out, in a few words, for the table (for example a gap or a checksum).</returns>
    string Run();
}
