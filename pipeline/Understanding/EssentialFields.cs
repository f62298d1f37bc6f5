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

    /// <summary>Whether the field is one of them.</summary>
    public static bool Has(string kind, string field) => ByKind.TryGetValue(kind, out string[]? fields) && fields.Contains(field);

    /// <summary>Those of a kind.</summary>
    public static IReadOnlyList<string> Of(string kind) => ByKind.GetValueOrDefault(kind, []);
}
