using Microsoft.Playwright;
using PartsSignal.Pipeline.Bench;

namespace PartsSignal.EndToEnd.Tests.Bench;

/// <summary>A first day at the bench in a real browser, from an empty folder to the printed van list.</summary>
public sealed class BenchWalkTests(BrowserHost browser) : IClassFixture<BrowserHost>
{
    private const int UpdateMilliseconds = 240_000;
    private static readonly PageWaitForURLOptions Committed = new() { WaitUntil = WaitUntilState.Commit };

    [BrowserFact]
    public Task FirstDay_OnDesktopWithScript_EndsWithAVanList() => WalkAsync(1280, script: true);

    [LongBrowserFact]
    public Task FirstDay_OnPhoneWithoutScript_EndsWithAVanList() => WalkAsync(390, script: false);

    /// <summary>
    /// The same day with files from elsewhere; PARTSSIGNAL_WALK names folders of them, parted by semicolons. Each is walked on
    /// a desktop with script and on a phone without, and its pages are then looked at the other way round.
    /// </summary>
    [BrowserFact]
    [Trait("Group", "Slow")]
    public async Task FirstDay_FilesFromElsewhere_EndsWithVanListsOrSaysWhyThereAreNone()
    {
        string[] folders = Environment.GetEnvironmentVariable("PARTSSIGNAL_WALK")?.Split(';', StringSplitOptions.RemoveEmptyEntries) ?? [];
        Assert.SkipWhen(folders.Length == 0, "PARTSSIGNAL_WALK names no folders");
        foreach (string folder in folders)
        {
            foreach ((int width, bool script) in new[] { (1280, true), (390, false) })
            {
                await using RunningBench bench = await RunningBench.StartAsync();
                string name = $"walk-{Path.GetFileName(folder.TrimEnd('/'))}";
                await using (OpenedPage opened = await browser.OpenAsync(bench.StartAddress, width, script))
                {
                    var walk = new OwnersWalk(bench, opened, script, $"{name}-{width}");
                    await walk.AddFilesAsync([.. Directory.EnumerateFiles(folder).Where(f => UploadedFiles.NameOf(f) is not null)]);
                    await walk.AnswerWhatHoldsAnywayAsync();
                    await walk.UpdateAsync(UpdateMilliseconds);
                    await walk.LookAroundAsync();
                }

                await using OpenedPage other = await browser.OpenAsync(bench.StartAddress, width, !script);
                await new OwnersWalk(bench, other, !script, $"{name}-{width}-{(script ? "plain" : "script")}").LookAroundAsync();
            }
        }
    }

    [BrowserFact]
    public Task PartsForWaitingCalls_OnDesktopAndPaper_AreSound() => ShowWaitingAsync(1280);

    [BrowserFact]
    public Task PartsForWaitingCalls_OnPhoneAndPaper_AreSound() => ShowWaitingAsync(390);

    private async Task ShowWaitingAsync(int width)
    {
        await using RunningBench bench = await RunningBench.StartAsync();
        ShopFolder shop = bench.Shops.Add("Millrace Repairs");
        await File.WriteAllTextAsync(
            Path.Combine(Directory.CreateDirectory(shop.Output.Results).FullName, "van_booked.csv"),
            "van,job_id,opened_on,appliance_type,complaint_kind,need,part_number,quantity,chance,planned,aboard,take_along\n"
            + "1,J-20631,2026-10-29,washer,no_fill,inlet_valve,0028388,1,0.35,0,0,1\n1,J-20631,2026-10-29,washer,no_fill,level_switch,4471-20,1,0.12,1,1,0\n"
            + "1,J-20640,2026-10-30,unknown,other,control_board,PB7710093,1,0.22,1,0,0\n2,J-20644,2026-10-30,dryer,no_turn,drive_belt,90-3,1,0.41,1,,0\n");
        await using OpenedPage opened = await browser.OpenAsync(bench.StartAddress, width);
        await opened.Page.GotoAsync(bench.Address + "/waiting");
        Assert.Equal(2, await opened.Page.Locator("section.van > p.caution").CountAsync());
        await opened.ShootAsync($"bench-{width}-14-waiting");
        await opened.AssertSoundAsync();
        await opened.PrintAsync("Letter", $"bench-{width}-waiting");
        await opened.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
        Assert.True(await opened.Page.Locator("section.van > p.caution").First.IsVisibleAsync(), "the printed sheet has no caution");
    }

    [BrowserFact]
    public Task PagesAfterAnUpdate_OnDesktop_AreSound() => ShowAfterUpdateAsync(1280);

    [BrowserFact]
    public Task PagesAfterAnUpdate_OnPhone_AreSound() => ShowAfterUpdateAsync(390);

    // What an update leaves, without the update: months without a report, files that are not read, and files added since.
    private async Task ShowAfterUpdateAsync(int width)
    {
        await using RunningBench bench = await RunningBench.StartAsync();
        ShopFolder shop = bench.Shops.Add("Millrace Repairs");
        const string Jobs = "Job number,Call date,Finished,Make,Model number,Customer says,Part 1\nJ1,2026-06-03,2026-06-04,Orvane,WE100,does not heat,P100\n";
        await File.WriteAllTextAsync(Path.Combine(shop.Files, "job log of all years, as exported.csv"), Jobs);
        await File.WriteAllTextAsync(Path.Combine(shop.Files, "empty.csv"), "");
        await File.WriteAllTextAsync(
            Path.Combine(Directory.CreateDirectory(shop.Output.Results).FullName, "month_figures.csv"),
            "month,calls,still_open,first_visit_share,first_visit_lower,first_visit_upper,no_part_share,no_part_lower,no_part_upper\n2026-05-01,1300,4,0.75,0.7,0.8,,,\n2026-06-01,5,1,,,,0.2,0.1,0.4\n");
        Directory.CreateDirectory(Path.Combine(shop.Output.Reports, "2026-05"));
        await File.WriteAllTextAsync(Path.Combine(shop.Output.Reports, "2026-05", "index.html"), "<!DOCTYPE html>");
        await File.WriteAllTextAsync(
            shop.Output.RunRecord,
            """{ "files": [ { "file": "job log of all years, as exported.csv", "kind": "jobs", "read": 1, "loaded": 1 } ], "rows": { "read": 1, "loaded": 1 } }""");
        new ShopHistory(shop, TimeProvider.System).Keep(1);
        FiguresBasis.Save(shop, ShopInputs.Now(shop.Files));
        await File.WriteAllTextAsync(Path.Combine(shop.Files, "more jobs.csv"), Jobs);
        new UpdateMark(shop).Begin(goesBack: false);
        await using OpenedPage opened = await browser.OpenAsync(bench.StartAddress, width);
        foreach ((string name, string address, string said) in new[]
        {
            ("files", "/files?added=empty.csv", "The file is empty."),
            ("rows", "/rows", "Files that are not read"),
            ("results", "/results", "Changed since these figures were made: more jobs.csv added."),
            ("months", "/months", "Make the report"),
            ("history", "/history", "the figures shown now"),
            ("run", "/run", "was cut off"),
        })
        {
            await opened.Page.GotoAsync(bench.Address + address);
            await opened.ShootAsync($"bench-{width}-after-{name}");
            Assert.Contains(said, await opened.Page.InnerTextAsync("main"), StringComparison.Ordinal);
            await opened.AssertSoundAsync();
        }
    }

    private async Task WalkAsync(int width, bool script)
    {
        using var folder = new ScratchFolder();
        await Partssignal.RunAsync("sample", "--jobs", "200", "--seed", "23", "--output", folder.Sub("shop"));

        // As an owner has them: without our settings, and with a row that cannot be read.
        string[] files = [.. Directory.EnumerateFiles(folder.Sub("shop")).Where(f => Path.GetExtension(f) is ".csv" or ".xlsx" && !Path.GetFileName(f).StartsWith("serial-codes", StringComparison.Ordinal))];
        await using RunningBench bench = await RunningBench.StartAsync();
        await using OpenedPage opened = await browser.OpenAsync(bench.StartAddress, width, script);
        IPage page = opened.Page;
        string picture = $"bench-{width}";

        await ShowAsync("1-shops");
        await page.FillAsync("#name", "Millrace Repairs");
        await page.ClickAsync("text=Add >> nth=-1");
        await page.WaitForURLAsync("**/files");
        await page.SetInputFilesAsync("#files", files);
        await page.ClickAsync("button:has-text('Add files')");
        await page.WaitForSelectorAsync("details.table");
        await ShowAsync("2-files");
        await page.ClickAsync("details.table >> nth=0 >> summary");
        Assert.Contains("jobs", await page.InnerTextAsync("main"), StringComparison.OrdinalIgnoreCase);
        int questions = await page.Locator("#questions fieldset").CountAsync();
        if (questions > 0)
        {
            // Saying what holds anyway is an answer too, and is not asked again.
            for (int i = 0; i < questions; i++)
            {
                await page.Locator("#questions fieldset").Nth(i).Locator("p.choice:has-text('(for now)') input").CheckAsync();
            }

            await page.ClickAsync("button:text-is('Save answers')");
            await page.WaitForLoadStateAsync();
            Assert.True(await page.Locator("#questions fieldset").CountAsync() < questions);
        }

        await page.ClickAsync("button:has-text('Update the figures')");
        await page.WaitForURLAsync("**/run");
        await ShowAsync("3-run");
        await page.WaitForSelectorAsync("text=See the results", new PageWaitForSelectorOptions { Timeout = UpdateMilliseconds });
        await ShowAsync("4-done");

        await page.ClickAsync("text=See what became of every row");
        await page.WaitForSelectorAsync("text=All files");
        await ShowAsync("5-rows");
        await MendOneAsync();

        await page.ClickAsync("nav >> text=Words");
        await page.ClickAsync("ul.tabs a >> nth=0");
        await page.Locator("table.words input[name^=answer] >> nth=0").FillAsync("ignore");
        await page.ClickAsync("button:has-text('Save answers')");
        await page.WaitForSelectorAsync("text=Saved.");
        await ShowAsync("7-words");

        IDownload workbook = await page.RunAndWaitForDownloadAsync(() => page.ClickAsync("text=Save the workbook"));
        await page.SetInputFilesAsync("#workbook", await workbook.PathAsync() is { } saved ? Renamed(saved) : "");
        await page.ClickAsync("button:has-text('Read the answers')");
        await page.WaitForSelectorAsync("text=/answers? read/");

        await page.ClickAsync("nav >> text=Settings");
        await page.FillAsync("#callbackDays", "45");
        await page.ClickAsync("button:has-text('Save')");
        await page.WaitForSelectorAsync("text=Saved.");
        await ShowAsync("8-settings");

        await page.ClickAsync("nav >> text=Results");
        await ShowAsync("9-results");
        await page.ClickAsync("text=Van lists to print");
        Assert.True(await page.Locator("table.pick tbody tr").CountAsync() > 0, "the van list is empty");
        await ShowAsync("10-vans");
        await page.ClickAsync("nav >> text=Results");
        await page.ClickAsync("text=Parts for waiting calls");
        await ShowAsync("11-waiting");
        await page.ClickAsync("nav >> text=Results");
        await page.ClickAsync("text=Two months compared");
        await page.ClickAsync("button:has-text('Compare')");
        await page.WaitForURLAsync("**/compare?*", Committed);
        await ShowAsync("12-compare");
        await page.ClickAsync("nav >> text=Results");
        await page.ClickAsync("text=Ask about a call");
        await page.FillAsync("#complaint", "does not fill");
        await page.ClickAsync("button:has-text('Answer')");
        await page.WaitForURLAsync("**/answer?*", Committed);
        await opened.LoadedAsync();
        await opened.ShootAsync($"{picture}-13-answer");
        await page.GotoAsync(bench.Address + "/results");
        await page.ClickAsync("text=Report of");
        await page.WaitForURLAsync("**/reports/*/index.html", Committed);
        await opened.LoadedAsync();
        Assert.Contains("Millrace Repairs", await page.InnerTextAsync("body"), StringComparison.Ordinal);

        string Renamed(string path)
        {
            string named = folder.Sub("review-questions.xlsx");
            File.Copy(path, named);
            return named;
        }

        async Task ShowAsync(string name)
        {
            await opened.ShootAsync($"{picture}-{name}");
            await (script ? opened.AssertSoundAsync() : opened.AssertFitsAsync());
        }

        async Task MendOneAsync()
        {
            ILocator rejects = page.Locator("a[href^='/rows/']");
            Assert.True(await rejects.CountAsync() > 0, "the sample shop has refused rows");
            await rejects.First.ClickAsync();
            await ShowAsync("6-mend");
            int before = await page.Locator("form fieldset").CountAsync();
            await page.Locator("form fieldset >> nth=0").GetByLabel("Leave out").CheckAsync();
            await page.ClickAsync("button:has-text('Save')");
            await page.WaitForSelectorAsync("text=Saved.");
            Assert.True(await page.Locator("form fieldset").CountAsync() < before || before == 50);
            await page.ClickAsync("nav >> text=Rows");
        }
    }
}
