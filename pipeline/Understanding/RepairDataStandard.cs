using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>
/// The built-in map for logs in the Open Repair Data Standard (Open Repair Alliance), headers of versions 0.1 and 0.3.
/// The day of the event is that of the call; whether the repair is finished, its status says.
/// </summary>
internal static class RepairDataStandard
{
    private static readonly string[] Needed = ["id", "data_provider", "product_category", "brand", "repair_status", "group_identifier", "problem"];

    /// <summary>The map, or null where the header is another one.</summary>
    public static SourceMap? Map(string files, IReadOnlyList<string> columns)
    {
        string? day = columns.Contains("event_date") ? "event_date" : columns.Contains("date") ? "date" : null;
        if (day is null || !Array.TrueForAll(Needed, columns.Contains))
        {
            return null;
        }

        var map = new Dictionary<string, IReadOnlyList<string>>(StringComparer.Ordinal)
        {
            ["job_id"] = ["id"],
            ["opened_on"] = [day],
            ["appliance_type"] = ["product_category"],
            ["brand"] = ["brand"],
            ["made_on"] = ["year_of_manufacture"],
            // Version 0.1 let texts with commas run on into columns without a header.
            ["complaint"] = ["problem", .. columns.Where(c => c.StartsWith('#'))],
            ["outcome"] = ["repair_status"],
        };
        if (columns.Contains("model"))
        {
            map["model"] = ["model"];
        }

        if (columns.Contains("product_age"))
        {
            map["age_years"] = ["product_age"];
        }

        return new SourceMap
        {
            Files = files,
            Kind = "jobs",
            DateOrder = "ymd",
            NumberStyle = "point",
            Columns = map,
            Words = new Dictionary<string, IReadOnlyDictionary<string, string>>(StringComparer.Ordinal)
            {
                ["outcome"] = new Dictionary<string, string>(StringComparer.Ordinal)
                {
                    ["Fixed"] = "fixed",
                    ["Repairable"] = "unknown",
                    ["End of life"] = "not_worth_repairing",
                    ["Unknown"] = "unknown",
                },
            },
        };
    }
}
