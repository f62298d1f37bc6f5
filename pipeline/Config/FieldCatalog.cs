using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Config;

/// <summary>The fields that each kind of source can give: the keys of <see cref="SourceMap.Columns"/>.</summary>
public static class FieldCatalog
{
    private static readonly Dictionary<string, IReadOnlyList<string>> ByKind = new(StringComparer.Ordinal)
    {
        ["jobs"] =
        [
            "job_id", "opened_on", "closed_on", "technician", "van", "customer_name", "phone", "address", "email", "customer_kind",
            "appliance_type", "brand", "model", "serial", "made_on", "purchased_on", "age_years", "complaint", "error_code", "outcome",
            "visits", "labour", "updated_on", "parts_list", "part", "quantity", "description", "price", "from_van",
        ],
        ["job_parts"] = ["job_id", "part", "description", "quantity", "price", "from_van", "updated_on"],
        ["part_orders"] =
        [
            "order_id", "supplier", "ordered_on", "received_on", "part", "other_part", "description", "quantity", "unit_cost", "job_id",
            "returned_quantity", "return_reason", "updated_on",
        ],
        ["parts"] = ["part", "description", "component", "price", "size_class", "returnable_days", "warranty_days", "supplier"],
        ["supersessions"] = ["old_part", "new_part", "effective_on", "kind", "quantity"],
        ["part_aliases"] = ["supplier", "alias", "part"],
        ["fitments"] = ["model", "model_family", "part", "quantity"],
        ["models"] = ["model", "model_family", "appliance_type", "brand", "first_made", "last_made"],
        ["units"] =
        [
            "serial", "customer_name", "phone", "address", "email", "brand", "model", "appliance_type", "made_on", "installed_on", "removed_on",
        ],
        ["van_counts"] = ["van", "part", "on_hand", "counted_on"],
    };

    /// <summary>Names of the kinds.</summary>
    public static IReadOnlyList<string> Kinds { get; } = [.. ByKind.Keys];

    /// <summary>Fields of one group of part columns.</summary>
    public static IReadOnlyList<string> PartLine { get; } = ["part", "quantity", "description", "price", "from_van"];

    /// <summary>Fields of a kind; null: no such kind.</summary>
    public static IReadOnlyList<string>? ForKind(string kind) => ByKind.GetValueOrDefault(kind);
}
