using System.Globalization;
using System.Text;

namespace PartsSignal.EndToEnd.Tests.Privacy.Plants;

/// <summary>A shop of job logs in seven languages, orders, prices, models and counts, with plants in every column that people type into.</summary>
internal sealed class PlantedShop
{
    private static readonly string[] Columns = ["Job", "Opened", "Closed", "Tech", "Van", "Customer", "Phone", "Address", "Type", "Brand", "Model", "Serial", "Complaint", "Code", "Outcome", "Part", "Part text", "Qty"];

    private static readonly (string Language, string[] Complaints)[] Logs =
    [
        ("en", ["does not fill with water", "leaks under the door", "very noisy when spinning", "dead, no lights", "not heating since last week"]),
        ("de", ["heizt nicht mehr", "Wasser läuft unten aus", "sehr laut beim Schleudern", "Gerät ist ohne Funktion", "pumpt das Wasser nicht ab"]),
        ("fr", ["ne chauffe plus", "fuite d'eau sous la porte", "bruit au moment de l'essorage", "ne démarre pas", "ne vidange pas"]),
        ("es", ["no calienta el agua", "pierde agua por la puerta", "hace mucho ruido al centrifugar", "no enciende", "no desagua"]),
        ("nl", ["verwarmt niet meer", "lekt onder de deur", "maakt veel lawaai", "start niet", "pompt het water niet weg"]),
        ("it", ["non scalda più", "perde acqua dalla porta", "molto rumore con la centrifuga", "non parte", "non scarica l'acqua"]),
        ("pl", ["nie grzeje wody", "cieknie spod drzwi", "bardzo głośno wiruje", "nie włącza się", "nie pompuje wody"]),
    ];

    private static readonly string[] Brands = ["Velquora", "Ombrelin", "Quenvik", "Zumarre"];
    private static readonly string[] Names = ["Otis Tollerton", "Mrs Hartlebrook", "Mr Strandvik", "Ines Croxdale", "Elsbet Whitlowe", "Hamish Farthinghoe", "Nell Loxbeare", "Abel Rookhope"];
    private readonly List<(Plant Plant, string Cell)> _plants = [];
    private readonly Func<string, bool, Plant> _next;
    private readonly Dictionary<string, StringBuilder> _files = new(StringComparer.Ordinal);
    private int _row;

    private PlantedShop(int plants, Func<string, bool, Plant> next)
    {
        _next = next;
        int perLog = (plants * 3 / 4 / Logs.Length) + 1;
        foreach ((string language, string[] complaints) in Logs)
        {
            Log(language, complaints, perLog);
        }

        Orders(plants / 10);
        Lists(Math.Max(1, plants - _plants.Count));
    }

    /// <summary>The plants, each with the cell it stands in.</summary>
    public IReadOnlyList<(Plant Plant, string Cell)> Plants => _plants;

    /// <summary>Writes a shop into a folder.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="plants">How many plants.</param>
    /// <param name="next">The next plant for a file's language; true for a cell of free text.</param>
    public static PlantedShop Write(string folder, int plants, Func<string, bool, Plant> next)
    {
        var shop = new PlantedShop(plants, next);
        Directory.CreateDirectory(folder);
        foreach ((string name, StringBuilder text) in shop._files)
        {
            File.WriteAllText(Path.Combine(folder, name), text.ToString());
        }

        const string Jobs = """{ "job_id": "Job", "opened_on": "Opened", "closed_on": "Closed", "technician": "Tech", "van": "Van", "customer_name": "Customer", "phone": "Phone", "address": "Address", "appliance_type": "Type", "brand": "Brand", "model": "Model", "serial": "Serial", "complaint": "Complaint", "error_code": "Code", "outcome": "Outcome", "part": "Part", "description": "Part text", "quantity": "Qty" }""";
        IEnumerable<string> sources =
        [
            .. Logs.Select(l => $$"""{ "files": "jobs-{{l.Language}}.csv", "kind": "jobs", "columns": {{Jobs}} }"""),
            """{ "files": "orders.csv", "kind": "part_orders", "columns": { "order_id": "Order", "supplier": "Supplier", "ordered_on": "Ordered", "part": "Part", "other_part": "Other", "description": "Text", "quantity": "Qty", "job_id": "Job", "return_reason": "Reason" } }""",
            """{ "files": "prices.csv", "kind": "parts", "columns": { "part": "Part", "description": "Text", "component": "Component", "price": "Price", "supplier": "Supplier" } }""",
            """{ "files": "models.csv", "kind": "models", "columns": { "model": "Model", "model_family": "Family", "brand": "Brand", "appliance_type": "Type" } }""",
            """{ "files": "count.csv", "kind": "van_counts", "columns": { "van": "Van", "part": "Part", "on_hand": "On hand", "counted_on": "Day" } }""",
        ];
        File.WriteAllText(Path.Combine(folder, "shop.json"), $$"""{ "shop": "Planted", "asOf": "2026-10-31", "sources": [ {{string.Join(",\n", sources)}} ] }""");
        return shop;
    }

    private void Log(string language, string[] complaints, int plants)
    {
        string[] typed = ["Complaint", "Complaint", "Complaint", "Complaint", "Complaint", "Complaint", "Complaint", "Tech", "Van", "Brand", "Model", "Job", "Part", "Part text", "Code", "Outcome", "Type", "Serial"];
        StringBuilder file = Begin($"jobs-{language}.csv", Columns);
        int rows = Math.Max(240, plants * 2);
        for (int i = 0; i < rows; i++)
        {
            Dictionary<string, string> row = JobRow(language, complaints[i % complaints.Length]);
            if (i % 2 == 1 && i / 2 < plants)
            {
                Put(row, typed[i / 2 % typed.Length], $"jobs-{language}");
            }

            Add(file, Columns, row);
        }
    }

    private Dictionary<string, string> JobRow(string language, string complaint)
    {
        int n = _row++;
        return new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["Job"] = $"{language.ToUpperInvariant()}-{n:00000}",
            ["Opened"] = Day(n),
            ["Closed"] = Day(n),
            ["Tech"] = n % 2 == 0 ? "Marius" : "Tilly",
            ["Van"] = (n % 3 + 1).ToString(CultureInfo.InvariantCulture),
            ["Customer"] = Names[n % Names.Length],
            ["Phone"] = $"0117 496 {n % 9000 + 1000}",
            ["Address"] = $"{n % 90 + 1} Tannery Street, Marrowby",
            ["Type"] = n % 2 == 0 ? "washer" : "dryer",
            ["Brand"] = Brands[n % 4],
            ["Model"] = $"W{"ABCD"[n % 4]}41{n % 5}0-{"AB"[n % 2]}",
            ["Serial"] = $"LK28{n % 90000:00000}",
            ["Complaint"] = complaint,
            ["Code"] = n % 7 == 0 ? "E20" : "",
            ["Outcome"] = n % 3 == 0 ? "no part needed" : "part fitted",
            ["Part"] = n % 3 == 0 ? "" : $"4{n % 10}-118{n % 10}",
            ["Part text"] = n % 3 == 0 ? "" : n % 2 == 0 ? "Inlet valve" : "Drain pump",
            ["Qty"] = n % 3 == 0 ? "" : "1",
        };
    }

    private void Orders(int plants)
    {
        string[] columns = ["Order", "Supplier", "Ordered", "Part", "Other", "Text", "Qty", "Job", "Reason"];
        string[] typed = ["Reason", "Text", "Part", "Supplier", "Order", "Job", "Other"];
        StringBuilder file = Begin("orders.csv", columns);
        for (int i = 0; i < Math.Max(240, plants * 2); i++)
        {
            var row = new Dictionary<string, string>(StringComparer.Ordinal)
            {
                ["Order"] = $"H2026-{i:00000}",
                ["Supplier"] = i % 2 == 0 ? "Haldorvane" : "Brixomere",
                ["Ordered"] = Day(i),
                ["Part"] = $"4{i % 10}-118{i % 10}",
                ["Other"] = $"HV4{i % 50:0000}",
                ["Text"] = i % 2 == 0 ? "Inlet valve" : "Drain pump",
                ["Qty"] = "1",
                ["Job"] = $"EN-{i % 200:00000}",
                ["Reason"] = i % 4 == 0 ? "wrong part ordered" : "",
            };
            if (i % 2 == 1 && i / 2 < plants)
            {
                Put(row, typed[i / 2 % typed.Length], "orders");
            }

            Add(file, columns, row);
        }
    }

    private void Lists(int plants)
    {
        (string Name, string[] Columns, string[] Typed, Func<int, string[]> Row)[] lists =
        [
            ("prices", ["Part", "Text", "Component", "Price", "Supplier"], ["Part", "Text", "Component", "Supplier"], i => [$"4{i % 10}-{i:0000}", "Inlet valve", "inlet_valve", "12.50", "Haldorvane"]),
            ("models", ["Model", "Family", "Brand", "Type"], ["Model", "Family", "Brand", "Type"], i => [$"W{"ABCD"[i % 4]}{i:0000}-A", "VE-WA", Brands[i % 4], "washer"]),
            ("count", ["Van", "Part", "On hand", "Day"], ["Van", "Part"], i => [$"{i % 3 + 1}", $"4{i % 10}-{i:0000}", "1", "2026-10-30"]),
        ];
        foreach ((string name, string[] columns, string[] typed, Func<int, string[]> make) in lists)
        {
            int own = (plants / lists.Length) + 1;
            StringBuilder file = Begin(name + ".csv", columns);
            for (int i = 0; i < Math.Max(240, own * 2); i++)
            {
                string[] cells = make(i);
                var row = columns.Zip(cells).ToDictionary(c => c.First, c => c.Second, StringComparer.Ordinal);
                if (i % 2 == 1 && i / 2 < own)
                {
                    Put(row, typed[i / 2 % typed.Length], name);
                }

                Add(file, columns, row);
            }
        }
    }

    private void Put(Dictionary<string, string> row, string column, string file)
    {
        string language = file.StartsWith("jobs-", StringComparison.Ordinal) ? file[^2..] : "en";
        Plant plant = Next();
        while (plant.Customer is not null && !row.ContainsKey("Customer"))
        {
            // Without its customer beside it a lone word is a word.
            plant = Next();
        }

        int place = _plants.Count % 4;
        string before = row[column];
        row[column] = before.Length == 0 || place == 3 ? plant.Typed : place == 0 ? $"{before} {plant.Typed}" : place == 1 ? $"{before}, {plant.Typed}" : $"{plant.Typed} {before}";
        if (plant.Customer is not null)
        {
            row["Customer"] = plant.Customer;
        }

        _plants.Add((plant, $"{file} {column}"));

        Plant Next() => _next(language, column is "Complaint" or "Part text" or "Text" or "Reason");
    }

    private StringBuilder Begin(string name, string[] columns) => _files[name] = new StringBuilder(string.Join(',', columns)).Append('\n');

    private static void Add(StringBuilder file, string[] columns, Dictionary<string, string> row) =>
        file.Append(string.Join(',', columns.Select(c => "\"" + row[c].Replace("\"", "\"\"", StringComparison.Ordinal) + "\""))).Append('\n');

    private static string Day(int n) => new DateOnly(2024, 1, 1).AddDays(n % 1000).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
