using System.Net;
using System.Text.RegularExpressions;
using PartsSignal.Pipeline.Bench;
using PartsSignal.Pipeline.Review;

namespace PartsSignal.EndToEnd.Tests.Bench;

/// <summary>What the bench says and asks where an owner acts: names that are right already, lists to print, forgetting a customer.</summary>
public sealed partial class BenchAnswersTests
{
    private static readonly string[] FamilyColumns = ["learned_family", "brand", "appliance_type", "models", "model_numbers", "note", "answer"];

    [Fact]
    public async Task Post_AllNamesAreRight_AnswersTheOpenOnesAndKeepsWhatWasTyped()
    {
        await using RunningBench bench = await RunningBench.StartAsync();
        ShopFolder shop = WithFamilies(bench);
        using HttpClient client = await bench.ClientWithCookieAsync();
        await PostAsync(client, "/words/" + ReviewNames.Families, ("answer0", ""), ("answer1", "K 42"), ("answer2", ""), (WordPages.AllRight, "yes"));
        Assert.Equal(["K41", "K 42", "K43"], Answers(shop));
    }

    [Fact]
    public async Task Post_TickedName_IsAnAnswerAndUntickedIsNone()
    {
        await using RunningBench bench = await RunningBench.StartAsync();
        ShopFolder shop = WithFamilies(bench);
        using HttpClient client = await bench.ClientWithCookieAsync();
        await PostAsync(client, "/words/" + ReviewNames.Families, ("answer0", ""), ("right0", "yes"), ("answer1", ""), ("answer2", ""));
        Assert.Equal(["K41", "", ""], Answers(shop));
        await PostAsync(client, "/words/" + ReviewNames.Families, ("answer0", ""), ("answer1", ""), ("answer2", ""));
        Assert.Equal(["", "", ""], Answers(shop));
    }

    [Fact]
    public async Task Get_ListWithChoices_ShowsThem()
    {
        await using RunningBench bench = await RunningBench.StartAsync();
        ShopFolder shop = bench.Shops.Add("Millrace");
        ReviewFile.Write(Path.Combine(Directory.CreateDirectory(shop.Output.Review).FullName, ReviewNames.Complaints), ["words", "times", "counted_as", "appliance_type", "example", "note", "answer"], [["it sulks", "3", "", "washer", "J1", "", ""]]);
        using HttpClient client = await bench.ClientWithCookieAsync();
        string page = await client.GetStringAsync("/words?list=" + ReviewNames.Complaints);
        Assert.Matches("<summary>What to choose from</summary>\\s*<p class=\"quiet\">[^<]*no fill[^<]*</p>", page);
    }

    // The technician looks for the number on the piece, and holds a sheet of paper that must say which shop and day it is of.
    [Fact]
    public async Task Get_VanList_NamesTheNumberOnThePieceAndWhatTheLoadCosts()
    {
        await using RunningBench bench = await RunningBench.StartAsync();
        ShopFolder shop = bench.Shops.Add("Millrace");
        string results = Directory.CreateDirectory(shop.Output.Results).FullName;
        await File.WriteAllTextAsync(
            Path.Combine(results, "van_changes.csv"),
            "van,action,part_number,label,description,quantity,other_van,by,money,supplier\n"
            + "North Side,keep,7-1,,belt,1,,,9.00,\nNorth Side,replace,4-5A,4-5,clamp,2,,,7.80,\nNorth Side,add,4-5A,,clamp,2,,,7.80,Karst\nNorth Side,send_back,9-9,,board,1,,2026-12-04,88.00,Karst\n");
        await File.WriteAllTextAsync(Path.Combine(results, "van_summary.csv"), "van,pieces,money_used\nNorth Side,5,24.60\n");
        await File.WriteAllTextAsync(Path.Combine(results, "van_plan.csv"), "van,part_number,price_known\nNorth Side,7-1,false\nNorth Side,4-5A,true\n");
        using HttpClient client = await bench.ClientWithCookieAsync();
        string page = Plain(await client.GetStringAsync("/vans"));
        Assert.Contains("Van North Side", page, StringComparison.Ordinal);
        Assert.Contains("Add 2 pieces for 7.80. The whole load is 5 pieces for 24.60. Parts without a known price are counted at a typical one.", page, StringComparison.Ordinal);
        Assert.Matches("use up first: old number .*4-5 clamp \\(new number 4-5A\\) 2 3.90", page);
        Assert.Matches("Add ☐ 4-5A clamp 2 3.90 Karst", page);
        Assert.Contains("9-9 board, by December 4, 2026 1", page, StringComparison.Ordinal);
        Assert.EndsWith("Keep ☐ 7-1 belt 1 not known", page[..page.IndexOf(" Everything stays", StringComparison.Ordinal)], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Get_WaitingWithoutFigures_SaysWhatIsMissing()
    {
        await using RunningBench bench = await RunningBench.StartAsync();
        bench.Shops.Add("Millrace");
        using HttpClient client = await bench.ClientWithCookieAsync();
        Assert.Contains("There are no figures yet.", await client.GetStringAsync("/waiting"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Get_Report_LeadsBackToTheResults()
    {
        await using RunningBench bench = await RunningBench.StartAsync();
        ShopFolder shop = bench.Shops.Add("Millrace");
        string month = Directory.CreateDirectory(Path.Combine(shop.Output.Reports, "2026-05")).FullName;
        await File.WriteAllTextAsync(Path.Combine(month, "index.html"), "<!DOCTYPE html>\n<html lang=\"en\"><body><main>Failures</main></body></html>");
        using HttpClient client = await bench.ClientWithCookieAsync();
        Assert.Contains("<body><nav class=\"back\" aria-label=\"PartsSignal\"><a href=\"/results\">Back to the results</a></nav><main>", await client.GetStringAsync("/reports/2026-05/index.html"), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await client.GetAsync("/reports/2026-06/index.html")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await client.GetAsync("/reports/..%2F..%2Fout/index.html")).StatusCode);
    }

    // It deletes earlier updates for good: nothing happens before the second yes.
    [Fact]
    public async Task Post_ForgetCustomer_AsksFirst()
    {
        await using RunningBench bench = await RunningBench.StartAsync();
        ShopFolder shop = bench.Shops.Add("Millrace");
        string rows = string.Concat(Enumerable.Range(1, 30).Select(i => $"J{i},2026-08-{(i % 27) + 1:00},WE100,does not heat,{(i == 4 ? "Orla Quillfeather" : $"Name{i} Other{i}")}\n"));
        await File.WriteAllTextAsync(Path.Combine(shop.Files, "jobs.csv"), "Job number,Call date,Model,Complaint,Customer\n" + rows);
        string removed = Directory.CreateDirectory(shop.Removed).FullName;
        using HttpClient client = await bench.ClientWithCookieAsync();
        string page = Plain(await PostAsync(client, "/settings/forget", ("customer", "Orla Quillfeather")));
        Assert.Contains("“Orla Quillfeather” stands in 1 row of 1 file.", page, StringComparison.Ordinal);
        Assert.Contains("This cannot be undone.", page, StringComparison.Ordinal);
        Assert.True(Directory.Exists(removed));
        Assert.False(File.Exists(shop.Output.Forgotten));
        Assert.Equal(WorkOutcome.None, bench.Work.Now.Outcome);

        await PostAsync(client, "/settings/forget", ("customer", "Orla Quillfeather"), ("sure", "yes"));
        Assert.False(Directory.Exists(removed));
        Assert.True(File.Exists(shop.Output.Forgotten));
        await bench.Work.WhenIdleAsync();
        Assert.Contains("The customer was forgotten in 1 job. The jobs stay, without the customer.", bench.Work.Now.Summary);
    }

    private static ShopFolder WithFamilies(RunningBench bench)
    {
        ShopFolder shop = bench.Shops.Add("Millrace");
        ReviewFile.Write(
            Path.Combine(Directory.CreateDirectory(shop.Output.Review).FullName, ReviewNames.Families), FamilyColumns,
            [.. new[] { "K41", "K42", "K43" }.Select(f => (IReadOnlyList<string?>)[f, "Dunmoor", "washer", "2", f + "-1 " + f + "-2", "", ""])]);
        return shop;
    }

    private static IEnumerable<string> Answers(ShopFolder shop) => QuestionList.All(shop.Output.Review, shop.Files).Single().Questions.Select(q => q.Answer);

    private static async Task<string> PostAsync(HttpClient client, string address, params (string Name, string Value)[] fields)
    {
        string token = TokenField().Match(await client.GetStringAsync("/shops")).Groups[1].Value;
        using var form = new FormUrlEncodedContent([new("__RequestVerificationToken", token), .. fields.Select(f => new KeyValuePair<string, string>(f.Name, f.Value))]);
        return await (await client.PostAsync(address, form)).Content.ReadAsStringAsync();
    }

    private static string Plain(string page) => Space().Replace(WebUtility.HtmlDecode(Markup().Replace(page, " ")).Replace('\u00A0', ' '), " ");

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex TokenField();

    [GeneratedRegex("<[^>]+>")]
    private static partial Regex Markup();

    [GeneratedRegex("\\s+")]
    private static partial Regex Space();
}
