using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using PartsSignal.Analysis.CrossReference;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Prints a part card: sections for people, one object for programs.</summary>
internal static class PartPrinter
{
    private const int FamiliesShown = 12;
    private static readonly JsonSerializerOptions Indented = new(JsonSerializerOptions.Default) { WriteIndented = true };

    private static readonly TableColumn<PartArrow>[] Arrows =
    [
        new("old_number", "old", a => a.Old), new("new_number", "new", a => a.New), new("effective_on", "from", a => a.EffectiveOn),
        new("kind", "kind", a => a.Kind), new("quantity", "pieces", a => a.Quantity),
    ];

    private static readonly TableColumn<Replacement>[] Replacements =
    [
        new("number", "number", r => r.Number), new("quantity", "pieces", r => r.Quantity), new("via", "as", r => Word(r.Via)),
    ];

    private static readonly TableColumn<PartAlias>[] Aliases =
    [
        new("supplier", "supplier", a => a.Supplier), new("alias", "own number", a => a.Alias), new("part_number", "for", a => a.Number), new("basis", "known from", a => a.Basis),
    ];

    private static readonly TableColumn<PartFamily>[] Families =
    [
        new("model_family", "family", f => f.Family), new("basis", "known from", f => f.Basis), new("times_seen", "jobs", f => f.TimesSeen),
        new("typical_quantity", "pieces", f => f.TypicalQuantity), new("last_seen", "last", f => f.LastSeen),
    ];

    private static readonly TableColumn<PartSupply>[] Suppliers =
    [
        new("supplier", "supplier", s => s.Supplier), new("lines", "orders", s => s.Lines), new("pieces", "pieces", s => s.Pieces), new("last_cost", "cost", s => s.LastCost, "0.00"),
        new("median_days", "half by", s => s.MedianDays, "0.0"), new("days_90", "90 % by", s => s.Days90, "0.0"),
        new("returned_share", "returned", s => s.ReturnedShare.Value, "0.0 %"), new("returned_lower", "from", s => s.ReturnedShare.Lower, "0.0 %"), new("returned_upper", "to", s => s.ReturnedShare.Upper, "0.0 %"),
    ];

    private static readonly TableColumn<PartPrice>[] Prices =
    [
        new("supplier", "supplier", p => p.Supplier), new("year", "year", p => p.Year), new("lines", "orders", p => p.Lines),
        new("lowest_cost", "lowest", p => p.LowestCost, "0.00"), new("median_cost", "median", p => p.MedianCost, "0.00"), new("highest_cost", "highest", p => p.HighestCost, "0.00"),
    ];

    private static readonly TableColumn<PartOnHand>[] OnHand =
    [
        new("van", "van", v => v.Van), new("on_hand", "on hand", v => v.OnHand), new("counted_on", "counted", v => v.CountedOn),
    ];

    public static void Print(TextWriter writer, OutputFormat format, PartCard card)
    {
        switch (format)
        {
            case OutputFormat.Json: writer.WriteLine(ToJson(card).ToJsonString(Indented)); break;
            case OutputFormat.Csv: TablePrinter.Print(writer, format, [.. Cells(ToJson(card))], CellColumns); break;
            default: Sections(writer, card); break;
        }
    }

    private static void Sections(TextWriter writer, PartCard card)
    {
        foreach ((string name, object? value) in Facts(card))
        {
            writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name.Replace('_', ' '),-22}{Shown(value)}"));
        }

        Section(writer, "Order today", card.Replacements.Replacements, Replacements);
        if (card.Replacements.Replacements.Count > 1)
        {
            writer.WriteLine($"The figures here are for {card.Current}. Look up the others by their own numbers.");
        }

        if (card.Replacements.InCycle)
        {
            writer.WriteLine("Replacement loop: the list leads back to this number, so it stays current.");
        }

        Section(writer, "Replaced by", card.Arrows, Arrows);
        Section(writer, "Suppliers' own numbers", card.Aliases, Aliases);
        Section(writer, "Fits", [.. card.Families.Take(FamiliesShown)], Families);
        if (card.Families.Count > FamiliesShown)
        {
            writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"and {card.Families.Count - FamiliesShown} more families"));
        }

        Section(writer, "Suppliers (days from order to delivery; share sent back)", card.Suppliers, Suppliers);
        Section(writer, "Prices", card.Prices, Prices);
        Section(writer, "On hand", card.OnHand, OnHand);
    }

    private static void Section<T>(TextWriter writer, string title, IReadOnlyList<T> rows, IReadOnlyList<TableColumn<T>> columns)
    {
        if (rows.Count > 0)
        {
            writer.WriteLine();
            writer.WriteLine(title);
            TablePrinter.Print(writer, OutputFormat.Table, rows, columns);
        }
    }

    private static readonly TableColumn<PartCell>[] CellColumns =
        [new("section", "section", c => c.Section), new("row", "row", c => c.Row), new("name", "name", c => c.Name), new("value", "value", c => c.Value)];

    // The card as one long table; section and row are empty for single values.
    private static IEnumerable<PartCell> Cells(JsonObject card)
    {
        foreach ((string name, JsonNode? value) in card)
        {
            IEnumerable<PartCell> cells = value switch
            {
                JsonArray rows => rows.SelectMany((row, i) => row!.AsObject().Select(c => new PartCell(name, i + 1, c.Key, Text(c.Value)))),
                JsonObject parts => parts.Select(c => new PartCell(name, null, c.Key, Text(c.Value))),
                _ => [new PartCell(null, null, name, Text(value))],
            };
            foreach (PartCell cell in cells)
            {
                yield return cell;
            }
        }
    }

    private static string? Text(JsonNode? value) => value is null ? null
        : value.GetValueKind() == JsonValueKind.String ? JsonSerializer.Deserialize<string>(value.ToJsonString())
        : value.ToJsonString();

    private sealed record PartCell(string? Section, int? Row, string Name, string? Value);

    private static IReadOnlyList<(string Name, object? Value)> Facts(PartCard card) =>
    [
        ("asked", card.Asked),
        ("part_number", card.Number),
        ("found_by", card.Basis),
        ("current_number", card.Current),
        ("known_from", card.Facts.KnownFrom),
        ("in_a_circle", card.Replacements.InCycle),
        ("description", card.Facts.Description),
        ("component", card.Facts.Component),
        ("price", card.Facts.Price),
        ("supplier", card.Facts.Supplier),
        ("size_class", card.Facts.SizeClass),
        ("returnable_days", card.Facts.ReturnableDays),
        ("warranty_days", card.Facts.WarrantyDays),
        ("still_made", card.Facts.Available),
        ("fitted_on_jobs", card.Facts.Jobs),
        ("last_fitted_on", card.Facts.LastFittedOn),
        ("early_failures", card.Early.Failed),
        ("followed_for_90_days", card.Early.Followed),
        ("early_failure_share", Percent(card.Early.Share)),
    ];

    private static JsonObject ToJson(PartCard card)
    {
        var json = new JsonObject();
        foreach ((string name, object? value) in Facts(card).Where(f => f.Name != "early_failure_share"))
        {
            json[name] = value is DateOnly day ? day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) : JsonValue.Create(value);
        }

        Estimate early = card.Early.Share;
        json["early_failure_share"] = new JsonObject { ["value"] = early.Value, ["lower"] = early.Lower, ["upper"] = early.Upper, ["missing"] = early.Missing };
        json["replacements"] = TablePrinter.ToJson(card.Replacements.Replacements, Replacements);
        json["arrows"] = TablePrinter.ToJson(card.Arrows, Arrows);
        json["aliases"] = TablePrinter.ToJson(card.Aliases, Aliases);
        json["families"] = TablePrinter.ToJson(card.Families, Families);
        json["suppliers"] = TablePrinter.ToJson(card.Suppliers, Suppliers);
        json["prices"] = TablePrinter.ToJson(card.Prices, Prices);
        json["on_hand"] = TablePrinter.ToJson(card.OnHand, OnHand);
        return json;
    }

    private static string Percent(Estimate share) => share.Missing ?? string.Create(
        CultureInfo.InvariantCulture, $"{100 * share.Value:0.0} % (very likely {100 * share.Lower:0.0} to {100 * share.Upper:0.0} %)");

    private static string Word(SupersessionKind kind) => kind switch
    {
        SupersessionKind.KitPart => "kit_part",
        SupersessionKind.Alternative => "alternative",
        _ => "replaces",
    };

    private static string Shown(object? value) => value switch
    {
        null => "-",
        bool flag => flag ? "yes" : "no",
        DateOnly day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
        _ => value.ToString() ?? "-",
    };
}
