using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Http;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Bench;

/// <summary>Writes the settings form into <c>shop.json</c> in one change. Keys it does not know stay.</summary>
internal static class SettingsForm
{
    private static readonly JsonSerializerOptions Indented = new(JsonSerializerOptions.Default) { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private static readonly JsonDocumentOptions Lenient = new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true };

    // Key in the file, label on the page, whole number, smallest and largest value.
    private static readonly (string Key, string Label, bool Whole, double Least, double Most)[] Numbers =
    [
        ("callbackDays", "Callback days", true, 1, 3650),
        ("secondVisitCost", "Cost of a second visit", false, 0, 1_000_000),
        ("reviewDays", "Days between restockings", true, 1, 365),
        ("leadTimeDays", "Days until an order arrives", true, 0, 365),
        ("vanBudget", "Money per van", false, 0, 1_000_000_000),
        ("vanSpace", "Space per van", false, 0, 1_000_000),
    ];

    private static readonly ShopSettings Defaults = new();

    private static readonly Dictionary<string, double> Assumed = new(StringComparer.Ordinal)
    {
        ["callbackDays"] = Defaults.CallbackDays,
        ["secondVisitCost"] = (double)Defaults.SecondVisitCost,
        ["reviewDays"] = Defaults.ReviewDays,
        ["leadTimeDays"] = Defaults.LeadTimeDays,
        ["vanBudget"] = (double)Defaults.VanBudget,
        ["vanSpace"] = Defaults.VanSpace,
    };

    /// <summary>Writes the first settings of a new shop: its name.</summary>
    public static void Name(ShopFolder shop) =>
        ShopFileWriter.Write(shop.Files, new JsonObject { ["$schema"] = "./" + ShopSchema.FileName, ["shop"] = shop.Name }.ToJsonString(Indented) + "\n");

    /// <summary>Saves the form.</summary>
    /// <exception cref="BadInputException">A value cannot be used; all faults together, and nothing is saved.</exception>
    public static void Save(string files, IFormCollection form)
    {
        string path = Path.Combine(files, ShopFile.Name);
        JsonObject shop = File.Exists(path) ? JsonNode.Parse(File.ReadAllText(path), documentOptions: Lenient)!.AsObject() : new JsonObject { ["$schema"] = "./" + ShopSchema.FileName };
        var faults = new List<string>();
        shop["shop"] = form["shop"].ToString().Trim();
        shop["currency"] = form["currency"].ToString().Trim();
        shop["dateOrder"] = form["dateOrder"].ToString();
        foreach ((string key, string label, bool whole, double least, double most) in Numbers)
        {
            // What was only looked at stays the program's own assumption, and is called that.
            if (Number(form[key].ToString(), label, whole, least, most, faults) is { } value && (shop.ContainsKey(key) || value != Assumed[key]))
            {
                shop[key] = Node(value);
            }
        }

        shop["vans"] = Vans(form, shop["vans"] as JsonArray, faults);
        if (faults.Count > 0)
        {
            throw new BadInputException(faults);
        }

        string text = shop.ToJsonString(Indented) + "\n";
        ShopFile.Parse(text);
        Directory.CreateDirectory(files);
        ShopFileWriter.Write(files, text);
    }

    private static JsonArray Vans(IFormCollection form, JsonArray? before, List<string> faults)
    {
        var vans = new JsonArray();
        for (int i = 0; form.ContainsKey(Field(i, "name")); i++)
        {
            string name = form[Field(i, "name")].ToString().Trim();
            if (name.Length == 0)
            {
                continue;
            }

            JsonObject van = before?.OfType<JsonObject>().FirstOrDefault(v => (string?)v["van"] == name)?.DeepClone().AsObject() ?? new JsonObject { ["van"] = name };
            foreach (string key in new[] { "budget", "space" })
            {
                van.Remove(key);
                if (form[Field(i, key)].ToString() is { Length: > 0 } typed && Number(typed, $"Van {name}, {key}", false, 0, 1_000_000_000, faults) is { } value)
                {
                    van[key] = Node(value);
                }
            }

            van.Remove("technicians");
            if (form[Field(i, "crew")].ToString().Split([',', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries) is { Length: > 0 } crew)
            {
                van["technicians"] = new JsonArray([.. crew.Select(t => (JsonNode)t)]);
            }

            vans.Add((JsonNode)van);
        }

        return vans;
    }

    private static string Field(int van, string name) => string.Create(CultureInfo.InvariantCulture, $"van{van}.{name}");

    private static JsonValue Node(double value) => value == Math.Floor(value) && Math.Abs(value) < 1e15 ? JsonValue.Create((long)value) : JsonValue.Create(value);

    private static double? Number(string typed, string label, bool whole, double least, double most, List<string> faults)
    {
        string plain = typed.Trim().Replace(" ", "", StringComparison.Ordinal);
        if (double.TryParse(plain, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double value) && value >= least && value <= most && (!whole || value == Math.Floor(value)))
        {
            return value;
        }

        string kind = whole ? "a whole number" : "a plain number, for example 1800 or 38.50";
        faults.Add(string.Create(CultureInfo.InvariantCulture, $"{label}: type {kind} from {least:0.##} to {most:0.##}."));
        return null;
    }
}
