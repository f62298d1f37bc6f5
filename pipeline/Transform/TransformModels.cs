namespace PartsSignal.Pipeline.Transform;

/// <summary>One table that combining makes.</summary>
/// <param name="Table">Its name.</param>
/// <param name="Sql">Its query under <c>Sql/</c>.</param>
/// <param name="Stored">True: a table of the store, held to the contract's columns.</param>
/// <param name="View">True: nothing is made; later steps read through it.</param>
/// <param name="BySpan">True: a stored table made for one span of days after the other, so that its memory does not grow with the years.</param>
public sealed record SqlModel(string Table, string Sql, bool Stored, bool BySpan = false, bool View = false);

/// <summary>The order in which the tables are made; a table reads only those above it.</summary>
public static class TransformModels
{
    /// <summary>Until the catalogue and its arrows are known.</summary>
    public static readonly IReadOnlyList<SqlModel> Numbers =
    [
        Between("int_as_of"),
        Between("int_duplicate_keys"),
        Between("int_natural_keys"),
        Between("int_row_status"),
        Between("int_orphan_part_lines"),
        View("int_job_part_rows"),
        Between("int_seen_part_numbers"),
        Between("int_catalog"),
        Between("int_answered_part_numbers"),
        Between("int_answered_components"),
        Between("int_answered_families"),
        Between("int_part_aliases"),
        Stored("supersessions"),
    ];

    /// <summary>Everything that follows, once the day of the data is set.</summary>
    public static readonly IReadOnlyList<SqlModel> Rows =
    [
        Between("int_current_numbers"),
        Between("int_resolved_part_numbers"),
        Between("int_part_details"),
        Stored("parts"),
        Stored("part_aliases"),
        Stored("part_orders"),
        View("int_job_rows"),
        Between("int_model_spellings"),
        Between("int_part_line_numbers"),
        Between("int_part_pieces"),
        Stored("job_parts"),
        Stored("van_counts"),
        Between("int_brands"),
        Between("int_model_numbers"),
        Between("int_model_prefixes"),
        Between("int_listed_models"),
        Between("int_model_matches"),
        Stored("models"),
        Between("int_resolved_models"),
        Between("int_register_units"),
        Between("int_jobs_without_serial"),
        Between("int_place_units"),
        Between("int_place_model_units"),
        Between("int_jobs_placed_by_model"),
        Between("int_place_type_units"),
        Between("int_inferred_units"),
        Between("int_job_units"),
        Between("int_earlier_build_evidence"),
        View("int_build_evidence"),
        Between("int_build_intervals"),
        View("int_build_candidates"),
        Between("int_answered_build_dates"),
        Between("int_job_build_dates"),
        Stored("build_dates"),
        Between("int_answered_complaints"),
        Between("int_job_components"),
        View("int_job_ages"),
        Stored("jobs") with { BySpan = true },
        Stored("job_history"),
        Stored("units"),
        Stored("fitments"),
        Stored("rejects"),
        Stored("loads"),
        Between("int_answer_faults"),
        Stored("data_faults"),
    ];

    private static SqlModel Between(string table) => new(table, $"intermediate/{table}.sql", false);

    private static SqlModel View(string table) => new(table, $"intermediate/{table}.sql", false, View: true);

    private static SqlModel Stored(string table) => new(table, $"marts/{table}.sql", true);
}
