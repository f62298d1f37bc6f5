using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Analysis.AgeCurves;

/// <summary>
/// Chance that a component of a working appliance of some age fails within the next 12 months: what to look at "while
/// you are there". Basis register: any failure of a listed appliance. Basis units_seen: a return to this shop of an
/// appliance that was seen before, a lower bound for households that may call elsewhere.
/// </summary>
/// <param name="Basis">register or units_seen.</param>
/// <param name="ApplianceType">For example washer.</param>
/// <param name="ModelFamily">A family, or all.</param>
/// <param name="Component">For example drain_pump.</param>
/// <param name="AgeYears">Age reached, whole years.</param>
/// <param name="Chance">Chance within 12 months, 0 to 1; null with a reason.</param>
/// <param name="Lower">Lower end of its 95 % interval.</param>
/// <param name="Upper">Upper end of its 95 % interval.</param>
/// <param name="Events">Failures of the component in this family at any age.</param>
/// <param name="UnitYears">Years watched in this family at any age.</param>
/// <param name="EventsNearAge">Failures of the component in the whole type within a year of this age.</param>
/// <param name="UnitYearsNearAge">Years watched in the whole type within a year of this age.</param>
/// <param name="FamilyRatio">Rate of this family over that of its type at the same ages, shrunk towards 1; 1 for all.</param>
/// <param name="Missing">Why there is no chance; null when there is one.</param>
public sealed record NextYearRisk(
    string Basis,
    string ApplianceType,
    string ModelFamily,
    string Component,
    int AgeYears,
    double? Chance,
    double? Lower,
    double? Upper,
    long Events,
    double UnitYears,
    long EventsNearAge,
    double UnitYearsNearAge,
    double FamilyRatio,
    string? Missing)
{
    /// <summary>Fewest unit-years of the type near an age for a chance at that age.</summary>
    public const double FewestUnitYears = 10;

    /// <summary>Fewest failures of the component in the type for any chance.</summary>
    public const int FewestEvents = 3;

    /// <summary>1 - exp(-rate) of a rate per year, raised by what is untold: the expected, for the limits none and all.</summary>
    internal static Estimate FromRate(double rate, double logError, UntoldFactor untold) => Estimate.From(
        -WeibullLife.Expm1(-rate * untold.Expected),
        -WeibullLife.Expm1(-rate * Math.Exp(-Interval95.Z * logError)),
        -WeibullLife.Expm1(-rate * untold.Most * Math.Exp(Interval95.Z * logError)));
}
