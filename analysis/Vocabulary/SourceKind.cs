namespace PartsSignal.Analysis.Vocabulary;

/// <summary>Kinds of tables a shop gives, as stored in <c>loads</c>.</summary>
public static class SourceKind
{
    /// <summary>A kind in words for people, the same on every page; a kind of no such name as it is stored.</summary>
    /// <param name="kind">For example <c>van_counts</c>.</param>
    public static string Words(string kind) => kind switch
    {
        "jobs" => "the job log",
        "job_parts" => "parts used on jobs",
        "part_orders" => "orders of parts from suppliers",
        "parts" => "a parts or price list",
        "supersessions" => "old part numbers and what replaced them",
        "part_aliases" => "part numbers and what suppliers call them",
        "fitments" => "which part fits which model",
        "models" => "a list of models",
        "units" => "the register",
        "van_counts" => "what the vans carry",
        _ => kind,
    };
}
