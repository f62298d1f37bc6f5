namespace PartsSignal.Pipeline.Understanding;

/// <summary>Fields of a kind without which answers are lost.</summary>
internal static class EssentialFields
{
    private static readonly Dictionary<string, string[]> ByKind = new(StringComparer.Ordinal)
    {
        ["jobs"] = ["job_id", "opened_on", "closed_on", "complaint", "outcome", "appliance_type", "model", "serial", "part", "description", "parts_list", "quantity"],
        ["job_parts"] = ["job_id", "part", "description", "quantity"],
        ["part_orders"] = ["order_id", "supplier", "ordered_on", "received_on", "part", "quantity", "unit_cost"],
        ["parts"] = ["part", "description", "price", "supplier"],
        ["supersessions"] = ["old_part", "new_part"],
        ["part_aliases"] = ["supplier", "alias", "part"],
        ["fitments"] = ["model", "model_family", "part"],
        ["models"] = ["model", "model_family", "appliance_type", "brand", "first_made"],
        ["units"] = ["serial", "model", "appliance_type", "made_on", "installed_on", "removed_on"],
        ["van_counts"] = ["van", "part", "on_hand"],
    };

    // A kind is possible when every group has one of its fields.
    private static readonly Dictionary<string, string[][]> NeededByKind = new(StringComparer.Ordinal)
    {
        ["jobs"] = [["opened_on"], ["complaint", "outcome", "technician", "model", "serial", "part", "description", "appliance_type"]],
        ["job_parts"] = [["job_id"], ["part", "description"]],
        ["part_orders"] = [["order_id", "supplier", "received_on"], ["ordered_on", "received_on"], ["part", "other_part", "description"]],
        ["parts"] = [["part"], ["price", "description", "supplier"]],
        ["supersessions"] = [["old_part"], ["new_part"]],
        ["part_aliases"] = [["alias"], ["part"]],
        ["fitments"] = [["part"], ["model", "model_family"]],
        ["models"] = [["model"], ["model_family", "first_made", "appliance_type", "brand"]],
        ["units"] = [["serial"], ["installed_on", "removed_on", "made_on", "model", "appliance_type"]],
        ["van_counts"] = [["part"], ["on_hand"]],
    };

    /// <summary>Groups of fields of a kind, of each of which it needs one.</summary>
    public static IReadOnlyList<string[]> Needed(string kind) => NeededByKind[kind];

    /// <summary>Whether the field is one of them.</summary>
    public static bool Has(string kind, string field) => ByKind.TryGetValue(kind, out string[]? fields) && fields.Contains(field);

    /// <summary>Those of a kind.</summary>
    public static IReadOnlyList<string> Of(string kind) => ByKind.GetValueOrDefault(kind, []);
}
