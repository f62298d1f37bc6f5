using System.Text.Json;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Config;

/// <summary>Reads <c>shop.json</c> from the input folder. All faults are reported together, each with its path in the file.</summary>
internal static class ShopFile
{
    /// <summary>Name of the file.</summary>
    public const string Name = "shop.json";

    private const long Most = int.MaxValue;
    private static readonly JsonDocumentOptions Lenient = new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true };

    /// <summary>The settings of a folder; the defaults where it holds no <c>shop.json</c>.</summary>
    /// <exception cref="BadInputException">The file has faults.</exception>
    /// <param name="folder">The input folder.</param>
    /// <param name="file">Another place of the file, or null for the one in the folder.</param>
    public static ShopSettings Load(string folder, string? file = null)
    {
        if (!Directory.Exists(folder))
        {
            throw new BadInputException($"{folder}: no such folder. Name the folder that holds the shop's files.");
        }

        if (file is not null && !File.Exists(file))
        {
            throw new BadInputException($"{file}: no such file.");
        }

        string path = file ?? Path.Combine(folder, Name);
        return File.Exists(path) ? Parse(File.ReadAllText(path)) : new ShopSettings();
    }

    /// <summary>The settings of a text.</summary>
    /// <exception cref="BadInputException">The text has faults.</exception>
    public static ShopSettings Parse(string text)
    {
        var faults = new List<string>();
        ShopSettings settings;
        try
        {
            using JsonDocument document = JsonDocument.Parse(text, Lenient);
            if (document.RootElement.ValueKind != JsonValueKind.Object)
            {
                throw new BadInputException($"{Name}: must be an object in braces.");
            }

            settings = Read(new JsonValidator(document.RootElement, "", faults));
        }
        catch (JsonException bad)
        {
            throw new BadInputException($"{Name}: line {bad.LineNumber + 1}: is no JSON. {bad.Message.Split(" LineNumber")[0]}");
        }

        return faults.Count == 0 ? settings : throw new BadInputException(faults);
    }

    private static ShopSettings Read(JsonValidator json)
    {
        var otherwise = new ShopSettings();
        json.Text("$schema", null);
        ShopSettings settings = otherwise with
        {
            Shop = json.Text("shop", otherwise.Shop)!,
            Currency = json.Text("currency", otherwise.Currency)!,
            DateOrder = json.Choice("dateOrder", otherwise.DateOrder, SourceReader.DateOrders)!,
            NumberStyle = json.Choice("numberStyle", otherwise.NumberStyle, SourceReader.NumberStyles)!,
            AsOf = json.Day("asOf"),
            Sources = [.. json.Objects("sources").Select(SourceReader.Read)],
            Answers = json.Object("answers") is { } answers ? ReadAnswers(answers) : otherwise.Answers,
            Vans = [.. json.Objects("vans").Select(ReadVan)],
            SecondVisitCost = (decimal)json.Number("secondVisitCost", (double)otherwise.SecondVisitCost, 0, 1_000_000),
            SecondVisitCostGiven = json.Keys.Contains("secondVisitCost"),
            HoldingCostRate = json.Number("holdingCostRate", otherwise.HoldingCostRate, 0, 1),
            CallbackDays = (int)json.Whole("callbackDays", otherwise.CallbackDays, 1, 3650),
            ReviewDays = (int)json.Whole("reviewDays", otherwise.ReviewDays, 1, 365),
            LeadTimeDays = (int)json.Whole("leadTimeDays", otherwise.LeadTimeDays, 0, 365),
            ServiceTarget = json.Number("serviceTarget", otherwise.ServiceTarget, 0, 1),
            VanBudget = (decimal)json.Number("vanBudget", (double)otherwise.VanBudget, 0, 1_000_000_000),
            VanSpace = json.Number("vanSpace", otherwise.VanSpace, 0, 1_000_000_000),
            OffVanSizes = json.Texts("offVanSizes") ?? otherwise.OffVanSizes,
            Technicians = json.Choice("technicians", otherwise.Technicians, ["names", "initials"])!,
            RejectsDays = (int)json.Whole("rejectsDays", otherwise.RejectsDays, 1, 3650),
            Limits = json.Object("limits") is { } limits ? ReadLimits(limits) : otherwise.Limits,
            Seed = (int)json.Whole("seed", otherwise.Seed, int.MinValue, Most),
        };
        json.RefuseOthers();
        return settings;
    }

    private static Dictionary<string, string> ReadAnswers(JsonValidator json) =>
        json.Keys.ToDictionary(k => k, k => json.Text(k, "")!, StringComparer.Ordinal);

    private static ShopVan ReadVan(JsonValidator json)
    {
        double budget = json.Number("budget", -1, 0, 1_000_000_000);
        double space = json.Number("space", -1, 0, 1_000_000_000);
        var van = new ShopVan(json.NeededText("van"), budget < 0 ? null : (decimal)budget, space < 0 ? null : space) { Technicians = json.Texts("technicians") ?? [] };
        json.RefuseOthers();
        return van;
    }

    private static ReadingLimits ReadLimits(JsonValidator json)
    {
        var otherwise = new ReadingLimits();
        var limits = new ReadingLimits
        {
            MaxRowBytes = (int)json.Whole("maxRowBytes", otherwise.MaxRowBytes, 1_000, 1 << 30),
            MaxColumns = (int)json.Whole("maxColumns", otherwise.MaxColumns, 2, 1_000_000),
            MaxUnpackedBytes = json.Whole("maxUnpackedBytes", otherwise.MaxUnpackedBytes, 1_000, 1L << 50),
            MaxUnpackRatio = (int)json.Whole("maxUnpackRatio", otherwise.MaxUnpackRatio, 2, 1_000_000),
            MaxEntries = (int)json.Whole("maxEntries", otherwise.MaxEntries, 1, 10_000_000),
            MaxWorkbookBytes = json.Whole("maxWorkbookBytes", otherwise.MaxWorkbookBytes, 1_000, 1L << 40),
        };
        json.RefuseOthers();
        return limits;
    }
}
