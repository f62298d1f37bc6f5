using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using PartsSignal.SampleShop.Simulation;

namespace PartsSignal.SampleShop.Writing;

/// <summary>Writes the shop.json that says how the shop's files are read.</summary>
internal static class ShopJson
{
    private static readonly JsonSerializerOptions Style = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static string Write(int areas)
    {
        var sources = new JsonArray();
        foreach ((int year, LogLayout layout) in LogLayouts.ByYear.OrderBy(l => l.Key))
        {
            // the first of two exports stands before the second: the later entry wins
            if (year == 2024)
            {
                sources.Add(JobSource(LogLayouts.FirstExport));
            }

            sources.Add(JobSource(layout));
        }

        AddOthers(sources);
        var vans = new JsonArray();
        for (int van = 1; van <= areas * Area.Vans; van++)
        {
            vans.Add(new JsonObject { ["van"] = JobRow.Text(van), ["budget"] = 1500, ["space"] = 150 });
        }

        var shop = new JsonObject
        {
            ["shop"] = "Fennick Lane Appliance Repair",
            ["currency"] = "EUR",
            ["dateOrder"] = "ymd",
            ["numberStyle"] = "point",
            ["asOf"] = "2026-10-31",
            ["vans"] = vans,
            ["secondVisitCost"] = 85,
            ["callbackDays"] = 30,
            ["sources"] = sources,
        };
        return shop.ToJsonString(Style) + "\n";
    }

    private static JsonObject JobSource(LogLayout layout)
    {
        JsonObject source = Source(layout.File, "jobs", layout.EncodingName, layout.SeparatorName);
        if (layout.NotesAbove.Count > 0)
        {
            source["headerLine"] = layout.NotesAbove.Count + 1;
        }

        source["dateOrder"] = layout.DateFormat[0] switch { 'd' => "dmy", 'M' => "mdy", _ => "ymd" };
        source["numberStyle"] = layout.DecimalComma ? "comma" : "point";
        source["columns"] = Columns([
            .. layout.Columns.Select(c => (c.Field, c.Header)),
            .. layout.Parts is PartsHeld.InRows or PartsHeld.InOneCell ? layout.PartColumns : []]);
        if (layout.Parts == PartsHeld.InGroups)
        {
            var groups = new JsonArray();
            for (int g = 1; g <= LogLayout.Groups; g++)
            {
                groups.Add(Columns(layout.PartColumns.Select(c =>
                    (c.Field, string.Format(System.Globalization.CultureInfo.InvariantCulture, c.Header, g)))));
            }

            source["partGroups"] = groups;
        }

        source["words"] = Words(layout.Words, layout.PartColumns.Any(c => c.Field == "from_van"));
        return source;
    }

    private static JsonObject Words(LogWords words, bool fromVan)
    {
        var all = new JsonObject
        {
            ["outcome"] = Pairs(words.Outcomes.Where(o => o.Value.Length > 0).Select(o => (o.Value, LogWords.Ours(o.Key)))),
            ["appliance_type"] = Pairs(words.Types.Select(t => (t.Value, t.Key))),
            ["customer_kind"] = Pairs([("private", "household"), ("contract", "contract")]),
        };
        if (fromVan)
        {
            all["from_van"] = Pairs([(words.Yes, "yes"), (words.No, "no")]);
        }

        return all;
    }

    private static void AddOthers(JsonArray sources)
    {
        JsonObject apart = Source(LogLayouts.PartsApartFile, "job_parts", "utf-8", "comma");
        apart["columns"] = Columns([
            ("job_id", "Job ref"), ("part", "Part number"), ("description", "Part name"), ("quantity", "Count"), ("price", "Unit price"),
            ("from_van", "Van stock"), ("updated_on", "Booked")]);
        apart["words"] = new JsonObject { ["from_van"] = Pairs([("Y", "yes"), ("N", "no")]) };
        sources.Add(apart);
        (string, string)[] first =
        [
            ("order_id", "Order no"), ("ordered_on", "Ordered"), ("received_on", "Delivered"), ("job_id", "Your reference"), ("part", "Article"),
            ("other_part", "Maker number"), ("description", "Article text"), ("quantity", "Pieces"), ("unit_cost", "Net each"),
            ("returned_quantity", "Sent back"), ("return_reason", "Reason"),
        ];
        Add(OrderFiles.FirstEarly, "part_orders", "utf-8", "comma", first, Supplier.First);
        Add(OrderFiles.FirstDamaged, "part_orders", "utf-8", "comma",
            [.. first.Where(c => c.Item1 is not "part" and not "other_part"), ("part", "Maker number")], Supplier.First, "dmy");
        Add(OrderFiles.FirstLate, "part_orders", "utf-8", "comma", first, Supplier.First);
        Add(OrderFiles.Second, "part_orders", "windows-1252", "semicolon",
            [
                ("order_id", "Invoice"), ("ordered_on", "Invoice date"), ("received_on", "Delivery"), ("part", "Item code"), ("other_part", "Mfr part"),
                ("description", "Item"), ("quantity", "Qty"), ("unit_cost", "Unit net"), ("job_id", "Customer ref"),
                ("returned_quantity", "Credit qty"), ("return_reason", "Credit reason"),
            ], Supplier.Second, "dmy", "comma");
        Add(ReferenceFiles.FirstPrices, "parts", "utf-8", "comma",
            [
                ("part", "Part number"), ("description", "Description"), ("component", "Group"), ("price", "Net price"), ("size_class", "Size"),
                ("returnable_days", "Return days"), ("warranty_days", "Warranty days"),
            ], Supplier.First);
        Add(ReferenceFiles.SecondPrices, "parts", "windows-1252", "semicolon",
            [
                ("part", "Mfr part"), ("description", "Item"), ("price", "Net"), ("size_class", "Size"),
                ("returnable_days", "Returnable within"), ("warranty_days", "Warranty"),
            ], Supplier.Second, null, "comma", 3);
        JsonObject superseded = Source(ReferenceFiles.Supersessions, "supersessions", "utf-8", "comma");
        superseded["columns"] = Columns([("old_part", "Old number"), ("new_part", "New number"), ("effective_on", "From"), ("kind", "How"), ("quantity", "Count")]);
        superseded["words"] = new JsonObject
        {
            ["kind"] = Pairs([("replaced by", "replaces"), ("kit", "kit_part"), ("also fits", "alternative"), ("no longer made", "no_longer_made")]),
        };
        sources.Add(superseded);
        Add(ReferenceFiles.Aliases, "part_aliases", "utf-8", "comma", [("supplier", "Supplier"), ("alias", "Their number"), ("part", "Part number")]);
        Add(ReferenceFiles.Fitments, "fitments", "utf-8", "comma", [("model_family", "Family"), ("part", "Part number"), ("quantity", "Pieces")]);
        Add(ReferenceFiles.Models, "models", "utf-8", "comma",
            [
                ("model", "Model number"), ("model_family", "Family"), ("appliance_type", "Product"), ("brand", "Brand"),
                ("first_made", "First built"), ("last_made", "Last built"),
            ]);
        Add(ShopFiles.Register, "units", "utf-8", "semicolon",
            [
                ("serial", "Serial number"), ("customer_name", "House"), ("phone", "Telephone"), ("address", "Address"), ("brand", "Make"),
                ("model", "Model"), ("appliance_type", "Machine"), ("made_on", "Built"), ("installed_on", "Installed"), ("removed_on", "Taken out"),
            ]);
        Add(ShopFiles.VanCounts, "van_counts", "utf-8", "comma", [("van", "Van"), ("part", "Part number"), ("on_hand", "Counted"), ("counted_on", "On")]);

        void Add(string file, string kind, string encoding, string separator, (string, string)[] columns,
            string? supplier = null, string? dates = null, string? numbers = null, int? headerLine = null)
        {
            JsonObject source = Source(file, kind, encoding, separator);
            foreach ((string key, JsonNode? value) in new (string, JsonNode?)[]
                { ("supplier", supplier), ("dateOrder", dates), ("numberStyle", numbers), ("headerLine", headerLine) })
            {
                if (value is not null)
                {
                    source[key] = value;
                }
            }

            source["columns"] = Columns(columns);
            sources.Add(source);
        }
    }

    private static JsonObject Source(string file, string kind, string encoding, string separator) => new()
    {
        ["files"] = file,
        ["kind"] = kind,
        ["encoding"] = encoding,
        ["separator"] = separator,
    };

    private static JsonObject Columns(IEnumerable<(string Field, string Header)> columns) => Pairs(columns);

    private static JsonObject Pairs(IEnumerable<(string Key, string Value)> pairs)
    {
        var all = new JsonObject();
        foreach ((string key, string value) in pairs)
        {
            all[key] = value;
        }

        return all;
    }
}
