namespace PartsSignal.Pipeline.Transform;

/// <summary>What the combining of staged rows assumes.</summary>
internal sealed record TransformOptions
{
    /// <summary>Last day the data speaks for; null: the newest day in it.</summary>
    public DateOnly? AsOf { get; init; }

    /// <summary>A date code that makes an appliance older than so many years is not believed.</summary>
    public int OldestYears { get; init; } = 40;

    /// <summary>Fewest models that must share a prefix before it is learned as a family, 2 or more.</summary>
    public int FamilyMinModels { get; init; } = 3;

    /// <summary>About how many jobs are put together at a time, 1 or more; days are never cut. It bounds the memory and changes no row.</summary>
    public long SpanJobs { get; init; } = 200_000;
}
