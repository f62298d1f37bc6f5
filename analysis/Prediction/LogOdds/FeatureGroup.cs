namespace PartsSignal.Analysis.Prediction.LogOdds;

/// <summary>
/// Kinds of fact a call offers. All weights of a group share one spread (the standard deviation of their prior), which
/// is learned: a group that tells nothing shrinks to nothing.
/// </summary>
public enum FeatureGroup
{
    /// <summary>Base rate of each need on a type of appliance.</summary>
    Type,

    /// <summary>Complaint kind, whatever the appliance.</summary>
    Kind,

    /// <summary>Complaint kind on a type.</summary>
    TypeKind,

    /// <summary>Brand on a type.</summary>
    Brand,

    /// <summary>Model family.</summary>
    Family,

    /// <summary>Model number within its family.</summary>
    Model,

    /// <summary>Complaint kind on a family.</summary>
    FamilyKind,

    /// <summary>Logarithm of age: the slope is what a Weibull life contributes.</summary>
    Age,

    /// <summary>Age band on a type, for what the slope misses.</summary>
    AgeBand,

    /// <summary>Season, as the first harmonic of the year.</summary>
    Season,

    /// <summary>Error code, alone and by brand.</summary>
    Code,

    /// <summary>Household or contract.</summary>
    Customer,

    /// <summary>Words of the complaint.</summary>
    Word,

    /// <summary>What was done on this unit before.</summary>
    History,

    /// <summary>The need that was already met on this unit, and how long ago.</summary>
    Renewed,

    /// <summary>Quarter a family's young appliance was built in: bad batches show here.</summary>
    Batch,

    /// <summary>Age slope of a complaint kind: what needs no part is many things, and their mix moves with age and complaint.</summary>
    AgeKind,

    /// <summary>Words of a complaint whose kind no table tells.</summary>
    UnreadWord,
}
