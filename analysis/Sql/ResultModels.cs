namespace PartsSignal.Analysis.Sql;

/// <summary>
/// Tables that SQL makes over the store, by capability. Figures that need an estimator are written by their capability
/// from the counts gathered here.
/// </summary>
public static class ResultModels
{
    /// <summary>What the part predictor counts beside its odds.</summary>
    public static IReadOnlyList<SqlModel> Prediction => SqlModels.In("results/prediction");

    /// <summary>Counts behind the month figures.</summary>
    public static IReadOnlyList<SqlModel> Months => SqlModels.In("results/months");

    /// <summary>Counts and exposure behind the failure rates.</summary>
    public static IReadOnlyList<SqlModel> Rates => SqlModels.In("results/rates");

    /// <summary>What came back: callbacks, and replaced parts that failed again.</summary>
    public static IReadOnlyList<SqlModel> Callbacks => SqlModels.In("results/callbacks");

    /// <summary>Counts behind supplier quality.</summary>
    public static IReadOnlyList<SqlModel> Suppliers => SqlModels.In("results/suppliers");

    /// <summary>Ages, failures and watched time behind the age curves.</summary>
    public static IReadOnlyList<SqlModel> Curves => SqlModels.In("results/age_curves");

    /// <summary>Calls by month behind the trends.</summary>
    public static IReadOnlyList<SqlModel> Trends => SqlModels.In("results/trends");
}
