using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Reporting;

/// <summary>The model card as points an owner can read.</summary>
internal static class ModelCardText
{
    /// <summary>The points, empty if the card is missing or unreadable.</summary>
    public static IReadOnlyList<(string Point, string Text)> Read(OutputFolder output)
    {
        string path = Path.Combine(output.Model, "card.json");
        if (!File.Exists(path))
        {
            return [];
        }

        try
        {
            return Points(JsonNode.Parse(File.ReadAllText(path)));
        }
        catch (JsonException)
        {
            return [];
        }
    }

    private static List<(string, string)> Points(JsonNode? card)
    {
        var points = new List<(string, string)>();
        Add("What answers", card?["note"]);
        if (card?["learned_from"] is JsonObject from)
        {
            points.Add(("Learned from", string.Create(CultureInfo.InvariantCulture, $"{from["jobs"]} closed jobs, {from["first_call"]} to {from["last_closed"]}, {from["families"]} model families.")));
        }

        Add("Knows at booking", card?["known_at_booking"]);
        Add("Tested on", card?["months"]?["tested_on"]);
        foreach (JsonNode? gap in card?["cannot_know"] as JsonArray ?? [])
        {
            Add("Cannot know", gap);
        }

        points.Add(("Not for", "Deciding whether work is safe. Cautions and the maker's service sheet come first."));
        return points;

        void Add(string point, JsonNode? text)
        {
            if (text is JsonValue value && value.TryGetValue(out string? words) && words.Length > 0)
            {
                points.Add((point, words));
            }
        }
    }
}
