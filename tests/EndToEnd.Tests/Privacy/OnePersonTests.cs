using System.Buffers;
using System.Globalization;
using System.IO.Compression;
using System.Text;
using PartsSignal.EndToEnd.Tests.Bench;
using PartsSignal.Pipeline.Bench;
using PartsSignal.Pipeline.Rejects;

namespace PartsSignal.EndToEnd.Tests.Privacy;

/// <summary>
/// One person typed into every column, a mended row and a register, followed through all that the bench, an update and the
/// commands write or show: only the shop's own files, their copies and the refused rows name the person.
/// </summary>
public sealed class OnePersonTests
{
    private const string Map = """
        { "shop": "Millrace", "asOf": "2026-10-31", "sources": [
          { "files": "jobs.csv", "kind": "jobs", "columns": { "job_id": "Job", "opened_on": "Opened", "closed_on": "Closed", "technician": "Tech", "van": "Van", "customer_name": "Customer", "phone": "Phone", "address": "Address", "email": "Mail", "appliance_type": "Type", "brand": "Brand", "model": "Model", "serial": "Serial", "complaint": "Complaint", "error_code": "Code", "outcome": "Outcome", "fault_component": "Fault", "part": "Part", "description": "Part text" } },
          { "files": "register.csv", "kind": "units", "columns": { "serial": "Serial", "model": "Model", "appliance_type": "Type", "brand": "Brand", "customer_name": "Customer", "address": "Address", "installed_on": "Installed" } } ] }
        """;

    private const string NoDay = "ask Ottilie Farnsworth, 07700900461";

    private static readonly string[] Columns = ["Job", "Opened", "Closed", "Tech", "Van", "Customer", "Phone", "Address", "Mail", "Type", "Brand", "Model", "Serial", "Complaint", "Code", "Outcome", "Fault", "Part", "Part text"];
    private static readonly string[] Pages = ["/", "/files", "/run", "/run/progress", "/rows", "/words", "/results", "/vans", "/waiting", "/compare", "/settings", "/history", "/shops", "/reports/index.html"];
    private static readonly string[] Person = ["Farnswort", "Ottilie", "900461", "Lindenmoor", "ottilie.f"];

    [Fact]
    public async Task Update_OnePersonEverywhere_NamedInNothingThatIsWrittenOrShown()
    {
        await using RunningBench bench = await RunningBench.StartAsync();
        ShopFolder shop = bench.Shops.Add("Millrace");
        WriteFiles(shop.Files);
        using HttpClient client = await bench.ClientWithCookieAsync();
        Assert.Equal(0, (await Partssignal.RunAsync("load", "--input", shop.Files, "--out", shop.Output.Root)).ExitCode);

        // Mended as a person does it, and read again.
        string rejects = Path.Combine(shop.Output.Rejects, "jobs.csv" + RejectFile.Ending);
        var refused = RefusedRows.Read(rejects);
        RefusedRow row = Assert.Single(refused.Rows);
        Assert.Contains("Farnsworth", row.Raw, StringComparison.Ordinal);
        refused.Mend(shop.Files, Path.GetFileName(rejects), [(row, [.. row.Cells.Select(c => c == NoDay ? "2026-09-20" : c)])]);
        new SettledRows(shop.Folder).Add([row.Key]);
        await UpdateAsync(bench, shop);
        List<(string Place, string Text)> all = await WrittenAndShownAsync(shop, client);
        string[] serials = [.. Enumerable.Range(0, 40).Select(RegisteredSerial), .. Enumerable.Range(0, 240).Select(Serial)];
        Assert.Empty(Found(all, [.. Person, .. serials]));
    }

    [LongFact]
    public async Task Update_TechniciansByInitials_NamedInNothingThatIsWrittenOrShown()
    {
        await using RunningBench bench = await RunningBench.StartAsync();
        ShopFolder shop = bench.Shops.Add("Millrace");
        WriteFiles(shop.Files);
        string log = Path.Combine(shop.Files, "jobs.csv"), map = Path.Combine(shop.Files, "shop.json");
        File.WriteAllText(log, File.ReadAllText(log)
            .Replace("\"Marius\"", "\"Marius Quenthorpe\"", StringComparison.Ordinal).Replace("\"Tilly\"", "\"Tilly Ebbersley\"", StringComparison.Ordinal)
            .Replace("\"does not fill\"", "\"does not fill, quenthorpe was here, Tilly to look again\"", StringComparison.Ordinal));
        File.WriteAllText(map, Map.Replace("\"asOf\"", "\"technicians\": \"initials\", \"asOf\"", StringComparison.Ordinal));
        using HttpClient client = await bench.ClientWithCookieAsync();
        await UpdateAsync(bench, shop);
        string store = string.Join('\n', OutputTexts.Of(shop.Output.Root).Where(o => o.File.StartsWith("store", StringComparison.Ordinal)).Select(o => o.Text));
        Assert.Contains("\tMQ\t", store, StringComparison.Ordinal);
        Assert.Contains("\tTE\t", store, StringComparison.Ordinal);
        Assert.Empty(Found(await WrittenAndShownAsync(shop, client), ["Quenthorpe", "Ebbersley", "Marius", "Tilly"]));
    }

    [LongFact]
    public async Task Update_VansCalledAfterTechniciansByInitials_OneLabelEverywhere()
    {
        await using RunningBench bench = await RunningBench.StartAsync();
        ShopFolder shop = bench.Shops.Add("Millrace");
        WriteFiles(shop.Files);
        string log = Path.Combine(shop.Files, "jobs.csv");
        File.WriteAllLines(log, File.ReadAllLines(log).Select((line, i) => line
            .Replace("\"Marius\",\"1", "\"Marius Quenthorpe\",\"Marius", StringComparison.Ordinal)
            .Replace("\"Tilly\",\"2", i % 4 == 2 ? "\"Tilly Ebbersley\",\"Tilly" : "\"Tilly Ebbersley\",\"Timothy", StringComparison.Ordinal)));
        File.WriteAllText(Path.Combine(shop.Files, "count.csv"), "Part,Van,Pieces,Day\n40-1180,Tilly,3,2026-10-01\n40-1180,Timothy,5,2026-10-01\n40-1181,MARIUS,7,2026-10-01\n");
        File.WriteAllText(Path.Combine(shop.Files, "wide.csv"), "Part,On hand Tilly,On hand Timothy\n40-1182,11,13\n");
        const string Settings = """
            "technicians": "initials",
            "vans": [ { "van": "Tilly", "budget": 901, "technicians": ["Tilly Ebbersley"] }, { "van": "Timothy", "budget": 702 }, { "van": "Marius", "budget": 803 } ],
            "asOf"
            """;
        const string Counts = """
            "sources": [
            { "files": "count.csv", "kind": "van_counts", "columns": { "part": "Part", "van": "Van", "on_hand": "Pieces", "counted_on": "Day" } },
            { "files": "wide.csv", "kind": "van_counts", "columns": { "part": "Part", "on_hand": ["On hand Tilly", "On hand Timothy"] } },
            """;
        string settings = Map.Replace("\"asOf\"", Settings, StringComparison.Ordinal).Replace("\"sources\": [", Counts, StringComparison.Ordinal);
        File.WriteAllText(Path.Combine(shop.Files, "shop.json"), settings);
        using HttpClient client = await bench.ClientWithCookieAsync();
        await UpdateAsync(bench, shop);
        string[] summary = await File.ReadAllLinesAsync(Path.Combine(shop.Output.Results, "van_summary.csv"));
        var budgets = summary.Skip(1).Select(l => l.Split(',')).ToDictionary(c => decimal.Parse(c[1], CultureInfo.InvariantCulture).ToString("0", CultureInfo.InvariantCulture), c => c[0], StringComparer.Ordinal);
        Assert.Equal(["702", "803", "901"], budgets.Keys.Order(StringComparer.Ordinal));
        Assert.Equal("MA", budgets["803"]);
        Assert.Equal(["MA", "TI 1", "TI 2"], budgets.Values.Order(StringComparer.Ordinal));
        List<(string File, string Text)> store = [.. OutputTexts.Of(shop.Output.Store)];
        string counted = store.Single(o => o.File.StartsWith("van_counts", StringComparison.Ordinal)).Text;
        foreach ((string budget, string part, string pieces) in new[] { ("901", "40-1180", "3"), ("702", "40-1180", "5"), ("803", "40-1181", "7"), ("901", "40-1182", "11"), ("702", "40-1182", "13") })
        {
            Assert.Contains(counted.Split('\n').Select(l => l.Split('\t')), c => c[0] == budgets[budget] && c[1] == part && c.Contains(pieces));
        }

        string jobs = string.Join('\n', store.Where(o => o.File.StartsWith("jobs", StringComparison.Ordinal)).Select(o => o.Text));
        Assert.Contains(Jobs(budgets["901"]), l => l.Contains("J00001", StringComparison.Ordinal));
        Assert.Contains(Jobs(budgets["702"]), l => l.Contains("J00003", StringComparison.Ordinal));

        // The settings page shows the shop's own file, and offers no van twice.
        string page = await client.GetStringAsync("/settings");
        Assert.DoesNotContain($"value=\"{budgets["901"]}\"", page, StringComparison.Ordinal);
        IEnumerable<(string Place, string Text)> shown = (await WrittenAndShownAsync(shop, client)).Where(t => t.Place != "/settings").Select(t => (t.Place, WithoutHeadings(t.Text)));
        Assert.Empty(Found(shown, ["Quenthorpe", "Ebbersley", "Marius", "Tilly", "Timothy"]));

        // Columns are called as the shop's own file calls them.
        static string WithoutHeadings(string text) => text.Replace("On hand Tilly", "", StringComparison.OrdinalIgnoreCase).Replace("On hand Timothy", "", StringComparison.OrdinalIgnoreCase);
        IEnumerable<string> Jobs(string van) => jobs.Split('\n').Where(l => l.Split('\t').Contains(van));
    }

    private static string[] Found(IEnumerable<(string Place, string Text)> all, IReadOnlyList<string> sought)
    {
        // One pass over each text tells whether there is anything to name.
        var any = SearchValues.Create([.. sought], StringComparison.OrdinalIgnoreCase);
        return [.. all.Where(t => t.Text.AsSpan().ContainsAny(any)).SelectMany(t => sought.Where(p => t.Text.Contains(p, StringComparison.OrdinalIgnoreCase)).Select(p => $"{p} in {t.Place}")).Distinct()];
    }

    // All that an update wrote, the pages show, and the commands write and say.
    private static async Task<List<(string Place, string Text)>> WrittenAndShownAsync(ShopFolder shop, HttpClient client)
    {
        List<(string Place, string Text)> all = [.. OutputTexts.Of(shop.Output.Root)];
        all.AddRange(Directory.EnumerateFiles(shop.Folder).Select(f => (Path.GetFileName(f), File.ReadAllText(f))));
        foreach (string page in Pages)
        {
            using HttpResponseMessage answer = await client.GetAsync(page);
            all.Add((page, System.Net.WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync())));
        }

        string workbook = Path.Combine(shop.Folder, "questions.xlsx");
        string[][] commands =
        [
            ["load"], ["run"], ["report"], ["review", "--write", workbook], ["lookup", "--model", "WX4150-B", "--complaint", "does not fill"], ["part", "40-1180"], ["rates"],
        ];
        foreach (string[] command in commands)
        {
            string[] input = command[0] is "load" or "run" ? ["--input", shop.Files] : [];
            Partssignal done = await Partssignal.RunAsync([.. command, .. input, "--out", shop.Output.Root]);
            Assert.True(done.ExitCode == 0, $"{command[0]}: {done.Error}");
            all.Add((command[0], done.Out + done.Error));
        }

        File.Delete(Path.Combine(shop.Files, "shop.json"));
        foreach (string format in new[] { "json", "table" })
        {
            Partssignal inspected = await Partssignal.RunAsync("inspect", Path.Combine(shop.Files, "jobs.csv"), Path.Combine(shop.Files, "register.csv"), "--format", format);
            all.Add(("inspect " + format, inspected.Out + inspected.Error));
        }

        all.AddRange(OutputTexts.Of(shop.Output.Root));
        all.Add(("workbook", Parts(workbook)));
        Assert.Contains(all, t => t.Place.EndsWith("predictor.zip", StringComparison.Ordinal));
        Assert.Contains(all, t => t.Place.EndsWith(".xlsx", StringComparison.Ordinal));
        return all;
    }

    private static async Task UpdateAsync(RunningBench bench, ShopFolder shop)
    {
        Assert.True(bench.Work.Start(shop));
        await bench.Work.WhenIdleAsync();
        Assert.True(bench.Work.Now.Outcome == WorkOutcome.Done, string.Join(' ', bench.Work.Now.Messages));
    }

    private static string Parts(string workbook)
    {
        using ZipArchive zip = ZipFile.OpenRead(workbook);
        return string.Concat(zip.Entries.Select(e =>
        {
            using var part = new StreamReader(e.Open());
            return part.ReadToEnd();
        }));
    }

    private static string Serial(int n) => string.Create(CultureInfo.InvariantCulture, $"LK28{n * 37 % 100000:00000}Q");

    private static string RegisteredSerial(int n) => string.Create(CultureInfo.InvariantCulture, $"LK31{n * 53 % 100000:00000}Z");

    private static void WriteFiles(string folder)
    {
        string[] typed = ["Tech", "Van", "Type", "Brand", "Model", "Complaint", "Code", "Outcome", "Fault", "Part", "Part text", "Job", "Complaint"];
        var jobs = new StringBuilder(string.Join(',', Columns)).Append('\n');
        for (int n = 0; n < 240; n++)
        {
            Dictionary<string, string> row = Row(n);
            if (n % 12 == 5)
            {
                (row["Customer"], row["Phone"], row["Address"], row["Mail"]) = ("Mrs Ottilie Farnsworth", "07700 900461", "12 Lindenmoor Street, Marrowby", "ottilie.f@example.org");
                string column = typed[n / 12 % typed.Length];
                row[column] = (n / 12 % 3) switch
                {
                    0 => $"{row[column]} Ottilie Farnsworth 07700900461",
                    1 => $"{row[column]}, ring Farnswort, 12 Lindenmoor Street",
                    _ => $"{row[column]} ottilie.f@example.org",
                };
            }

            if (n == 17)
            {
                row["Opened"] = NoDay;
            }

            Add(jobs, Columns.Select(c => row[c]));
        }

        var register = new StringBuilder("Serial,Model,Type,Brand,Customer,Address,Installed\n");
        for (int n = 0; n < 40; n++)
        {
            Add(register, [RegisteredSerial(n), "WX4150-B", "washer", "Velquora", "Mrs Ottilie Farnsworth", "12 Lindenmoor Street, Marrowby", "2021-03-0" + (n % 9 + 1)]);
        }

        File.WriteAllText(Path.Combine(folder, "shop.json"), Map);
        File.WriteAllText(Path.Combine(folder, "jobs.csv"), jobs.ToString());
        File.WriteAllText(Path.Combine(folder, "register.csv"), register.ToString());
    }

    private static Dictionary<string, string> Row(int n)
    {
        string day = new DateOnly(2025, 1, 1).AddDays(n * 2).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        return new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["Job"] = $"J{n:00000}",
            ["Opened"] = day,
            ["Closed"] = day,
            ["Tech"] = n % 2 == 0 ? "Marius" : "Tilly",
            ["Van"] = n % 2 == 0 ? "1" : "2",
            ["Customer"] = $"Mr Abel Rookhope{(char)('a' + (n % 20))}",
            ["Phone"] = $"0117 496 {1000 + n}",
            ["Address"] = $"{n + 1} Tannery Row, Marrowby",
            ["Mail"] = "",
            ["Type"] = n % 3 == 0 ? "dryer" : "washer",
            ["Brand"] = "Velquora",
            ["Model"] = $"W{"XYZ"[n % 3]}4150-B",
            ["Serial"] = Serial(n),
            ["Complaint"] = (n % 3) switch { 0 => "does not heat", 1 => "does not fill", _ => "leaks under the door" },
            ["Code"] = n % 5 == 0 ? "E20" : "",
            ["Outcome"] = n % 4 == 0 ? "no part needed" : "part fitted",
            ["Fault"] = n % 4 == 0 ? "" : "inlet valve",
            ["Part"] = n % 4 == 0 ? "" : $"40-118{n % 3}",
            ["Part text"] = n % 4 == 0 ? "" : "Inlet valve",
        };
    }

    private static void Add(StringBuilder file, IEnumerable<string> cells) => file.Append(string.Join(',', cells.Select(c => $"\"{c}\""))).Append('\n');
}
