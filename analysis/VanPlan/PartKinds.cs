namespace PartsSignal.Analysis.VanPlan;

/// <summary>What is known of the parts beside their use.</summary>
/// <param name="Component">Index of each part's component; -1: not known.</param>
/// <param name="Listed">Families and parts a list says fit each other, as indexes.</param>
public sealed record PartKinds(IReadOnlyList<int> Component, IReadOnlyList<(int Family, int Part)> Listed)
{
    /// <summary>Nothing known of so many parts.</summary>
    public static PartKinds Unknown(int parts) => new([.. Enumerable.Repeat(-1, parts)], []);
}
