namespace PartsSignal.Pipeline.Combining;

/// <summary>One table that combining makes.</summary>
/// <param name="Table">Its name.</param>
/// <param name="Sql">Its query under <c>Sql/</c>.</param>
/// <param name="Stored">True: a table of the store, held to the contract's columns.</param>
/// <param name="View">True: nothing is made; later steps read through it.</param>
/// <param name="BySpan">True: a stored table made for one span of days after the other, so that its memory does not grow with the years.</param>
public sealed record CombineStep(string Table, string Sql, bool Stored, bool BySpan = false, bool View = false);

/// <summary>The order in which the tables are made; a table reads only those above it.</summary>
public static class CombineSteps
{
    /// <summary>Until the catalogue and its arrows are known.</summary>
    public static readonly IReadOnlyList<CombineStep> Numbers =
    [
        Between("as_of"),
        Between("repeated_marks"),
        Between("row_keys"),
        Between("row_fates"),
        Between("lost_rows"),
        View("kept_job_parts"),
        Between("seen_numbers"),
        Between("catalogue"),
        Between("answered_numbers"),
        Between("answered_components"),
        Between("answered_families"),
        Between("alias_keys"),
        Stored("supersessions"),
    ];

    /// <summary>Everything that follows, once the day of the data is set.</summary>
    public static readonly IReadOnlyList<CombineStep> Rows =
    [
        new("current_numbers", "CrossReference/current_numbers.sql", false),
        Between("resolved_numbers"),
        Between("part_facts"),
        Stored("parts"),
        Stored("part_aliases"),
        Stored("part_orders"),
        View("job_rows"),
        Between("model_writings"),
        Between("later_lines"),
        Between("followed_parts"),
        Stored("job_parts"),
        Stored("van_counts"),
        Between("brands"),
        Between("model_texts"),
        Between("model_prefixes"),
        Between("model_list"),
        Between("model_matches"),
        Stored("models"),
        Between("model_meanings"),
        Between("register_rows"),
        Between("open_jobs"),
        Between("place_units"),
        Between("model_units"),
        Between("placed_jobs"),
        Between("type_units"),
        Between("placed_units"),
        Between("job_units"),
        Between("earlier_evidence"),
        View("build_evidence"),
        Between("build_spans"),
        View("build_candidates"),
        Between("answered_builds"),
        Between("job_dates"),
        Stored("build_dates"),
        Between("answered_complaints"),
        Between("job_needs"),
        View("job_ages"),
        Stored("jobs") with { BySpan = true },
        Stored("job_history"),
        Stored("units"),
        Stored("fitments"),
        Stored("rejects"),
        Stored("loads"),
        Between("answer_faults"),
        Stored("data_faults"),
    ];

    private static CombineStep Between(string table) => new(table, $"Combine/{table}.sql", false);

    private static CombineStep View(string table) => new(table, $"Combine/{table}.sql", false, View: true);

    private static CombineStep Stored(string table) => new(table, $"Combine/{table}.sql", true);
}
