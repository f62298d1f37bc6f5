namespace PartsSignal.Pipeline.Understanding;

/// <summary>Decides what a file is about: the kind whose fields its columns give best, among those whose needed fields are there.</summary>
internal static class KindChooser
{
    // A kind is possible when every group has one of its fields.
    private static readonly Dictionary<string, string[][]> Needed = new(StringComparer.Ordinal)
    {
        ["jobs"] = [["opened_on"], ["complaint", "outcome", "technician", "model"]],
        ["job_parts"] = [["job_id"], ["part", "description"]],
        ["part_orders"] = [["order_id"], ["ordered_on"], ["part", "other_part", "description"]],
        ["parts"] = [["part"], ["price", "description"]],
        ["supersessions"] = [["old_part"], ["new_part"]],
        ["part_aliases"] = [["alias"], ["part"]],
        ["fitments"] = [["part"], ["model", "model_family"]],
        ["models"] = [["model"], ["model_family", "first_made", "last_made"]],
        ["units"] = [["serial", "model"], ["installed_on", "removed_on", "made_on"]],
        ["van_counts"] = [["van"], ["part"], ["on_hand"]],
    };

    /// <summary>The kind with its fields; null: the columns fit none.</summary>
    public static (string Kind, IReadOnlyDictionary<string, ColumnProfile> Fields)? Choose(IReadOnlyList<ColumnProfile> columns, bool hasGroups)
    {
        var fits = Needed.Keys
            .Where(k => !hasGroups || k == "jobs")
            .Select(k => (Kind: k, Choice: ColumnChooser.Choose(k, columns)))
            .Where(k => Array.TrueForAll(Needed[k.Kind], group => Array.Exists(group, k.Choice.Fields.ContainsKey)))
            .OrderByDescending(k => k.Choice.Score)
            .ToList();
        return fits.Count == 0 ? null : (fits[0].Kind, fits[0].Choice.Fields);
    }

    /// <summary>What is missing before a kind is possible.</summary>
    public static IEnumerable<string> Missing(string kind, IReadOnlyDictionary<string, ColumnProfile> fields) =>
        Needed[kind].Where(group => !Array.Exists(group, fields.ContainsKey)).Select(group => string.Join(" or ", group));
}
