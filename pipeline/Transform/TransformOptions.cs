using PartsSignal.Pipeline.Config;

namespace PartsSignal.Pipeline.Transform;

/// <summary>Assumptions of the transform.</summary>
internal sealed record TransformOptions
{
    /// <summary>Last day covered by the data, or null for the newest day in it.</summary>
    public DateOnly? AsOf { get; init; }

    /// <summary>The vans that the shop's settings list, so that nobody stands for them.</summary>
    public IReadOnlyList<ShopVan> Vans { get; init; } = [];

    /// <summary>What somebody said must be added to a job number, as <c>int_job_key</c> names it; null: the rows tell.</summary>
    public string? JobKey { get; init; }

    /// <summary>Oldest plausible age in years; date codes that imply more are ignored.</summary>
    public int OldestYears { get; init; } = 40;

    /// <summary>Fewest models that must share a prefix before it is learned as a family, 2 or more.</summary>
    public int FamilyMinModels { get; init; } = 3;

    /// <summary>Approximate number of jobs per batch, 1 or more; a day is never split. Limits memory; does not change any row.</summary>
    public long SpanJobs { get; init; } = 200_000;
}
