namespace PartsSignal.Analysis.Sql;

/// <summary>
/// Which tables SQL builds over the store, in which order: a table only reads the store and tables above it.
/// Tables whose figures need an estimator are written by their capability from the counts gathered here.
/// </summary>
public static class ResultSteps
{
    /// <summary>What the part predictor counts beside its odds.</summary>
    public static readonly IReadOnlyList<ResultStep> Prediction =
    [
        new("Prediction/parts_together"),
    ];

    /// <summary>Counts behind the month figures.</summary>
    public static readonly IReadOnlyList<ResultStep> Months =
    [
        new("Months/month_counts", Published: false),
        new("Months/month_need_counts", Published: false),
        new("Months/month_family_counts", Published: false),
    ];

    /// <summary>Counts and exposure behind the failure rates.</summary>
    public static readonly IReadOnlyList<ResultStep> Rates =
    [
        new("Rates/observation", Published: false),
        new("Rates/age_bands", Published: false),
        new("Rates/unit_windows", Published: false),
        new("Rates/unit_days", Published: false),
        new("Rates/rate_events", Published: false),
        new("Rates/rate_groups", Published: false),
        new("Rates/rate_counts", Published: false),
        new("Rates/unit_visits", Published: false),
        new("Rates/part_service", Published: false),
    ];

    /// <summary>What came back: callbacks, and replaced parts that failed again.</summary>
    public static readonly IReadOnlyList<ResultStep> Callbacks =
    [
        new("Callbacks/fix_followups", Published: false),
        new("Callbacks/callbacks"),
        new("Callbacks/callback_counts", Published: false),
        new("Callbacks/part_followups", Published: false),
        new("Callbacks/repeat_counts", Published: false),
    ];

    /// <summary>Counts behind supplier quality; reads the followed parts of <see cref="Callbacks"/>.</summary>
    public static readonly IReadOnlyList<ResultStep> Suppliers =
    [
        new("Suppliers/supplier_counts", Published: false),
        new("Suppliers/supplier_returns"),
        new("Suppliers/lead_days", Published: false),
    ];

    /// <summary>Ages, failures and watched time behind the age curves.</summary>
    public static readonly IReadOnlyList<ResultStep> Curves =
    [
        new("Curves/log_window", Published: false),
        new("Curves/unit_ages", Published: false),
        new("Curves/age_rejects"),
        new("Curves/unit_failures", Published: false),
        new("Curves/age_ledger", Published: false),
        new("Curves/truncated_ages", Published: false),
        new("Curves/first_causes", Published: false),
        new("Curves/unit_repairs", Published: false),
        new("Curves/replacement_spans", Published: false),
        new("Curves/age_exposure", Published: false),
        new("Curves/age_events", Published: false),
    ];

    /// <summary>Calls by month behind the trends.</summary>
    public static readonly IReadOnlyList<ResultStep> Trends =
    [
        new("Trends/trend_calls", Published: false),
        new("Trends/trend_span", Published: false),
    ];
}
