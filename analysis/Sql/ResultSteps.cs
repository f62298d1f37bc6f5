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
        new("prediction/parts_together"),
    ];

    /// <summary>Counts behind the month figures.</summary>
    public static readonly IReadOnlyList<ResultStep> Months =
    [
        new("months/month_counts", Published: false),
        new("months/month_need_counts", Published: false),
        new("months/month_family_counts", Published: false),
    ];

    /// <summary>Counts and exposure behind the failure rates.</summary>
    public static readonly IReadOnlyList<ResultStep> Rates =
    [
        new("rates/observation", Published: false),
        new("rates/age_bands", Published: false),
        new("rates/unit_windows", Published: false),
        new("rates/unit_days", Published: false),
        new("rates/rate_events", Published: false),
        new("rates/rate_groups", Published: false),
        new("rates/rate_counts", Published: false),
        new("rates/unit_visits", Published: false),
        new("rates/part_service", Published: false),
    ];

    /// <summary>What came back: callbacks, and replaced parts that failed again.</summary>
    public static readonly IReadOnlyList<ResultStep> Callbacks =
    [
        new("callbacks/fix_followups", Published: false),
        new("callbacks/callbacks"),
        new("callbacks/callback_counts", Published: false),
        new("callbacks/part_followups", Published: false),
        new("callbacks/repeat_counts", Published: false),
    ];

    /// <summary>Counts behind supplier quality; reads the followed parts of <see cref="Callbacks"/>.</summary>
    public static readonly IReadOnlyList<ResultStep> Suppliers =
    [
        new("suppliers/supplier_counts", Published: false),
        new("suppliers/supplier_returns"),
        new("suppliers/lead_days", Published: false),
    ];

    /// <summary>Ages, failures and watched time behind the age curves.</summary>
    public static readonly IReadOnlyList<ResultStep> Curves =
    [
        new("age_curves/log_window", Published: false),
        new("age_curves/unit_ages", Published: false),
        new("age_curves/age_rejects"),
        new("age_curves/unit_failures", Published: false),
        new("age_curves/age_ledger", Published: false),
        new("age_curves/truncated_ages", Published: false),
        new("age_curves/first_causes", Published: false),
        new("age_curves/unit_repairs", Published: false),
        new("age_curves/replacement_spans", Published: false),
        new("age_curves/age_exposure", Published: false),
        new("age_curves/age_events", Published: false),
    ];

    /// <summary>Calls by month behind the trends.</summary>
    public static readonly IReadOnlyList<ResultStep> Trends =
    [
        new("trends/trend_calls", Published: false),
        new("trends/trend_span", Published: false),
    ];
}
