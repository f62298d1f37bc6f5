namespace PartsSignal.Analysis.Trends;

/// <summary>
/// A monthly series. A component in one family is held against that family's calls; a component in all families, and
/// a family with all its faults, against the calls of the appliance type.
/// </summary>
/// <param name="ApplianceType">For example washer.</param>
/// <param name="Component">A component, or <see cref="All"/>.</param>
/// <param name="ModelFamily">A family, or <see cref="All"/>.</param>
public sealed record SeriesKey(string ApplianceType, string Component, string ModelFamily)
{
    /// <summary>Stands for every component, or every family.</summary>
    public const string All = "all";

    /// <summary>Counts all of a family's calls.</summary>
    public bool IsFamily => Component == All;

    /// <summary>Counts a component over all families of the type.</summary>
    public bool IsParent => ModelFamily == All;

    /// <summary>The same component over all families of the type.</summary>
    public SeriesKey Parent => this with { ModelFamily = All };

    /// <summary>True for a call that the series counts.</summary>
    public bool Counts(TrendCall call) => IsFamily ? call.ModelFamily == ModelFamily : call.HasFailure && call.Component == Component;
}
