using Microsoft.Playwright;

namespace PartsSignal.EndToEnd.Tests.Bench;

/// <summary>The steps of an owner's first day, whatever files there are. Every page on the way is checked and pictured.</summary>
internal sealed class OwnersWalk(RunningBench bench, OpenedPage opened, bool script, string picture)
{
    private int _shown;

    private IPage Page => opened.Page;

    /// <summary>Names a shop and adds its files.</summary>
    public async Task AddFilesAsync(string[] files)
    {
        await ShowAsync("shops");
        await Page.FillAsync("#name", "Millrace Repairs");
        await Page.ClickAsync("text=Add >> nth=-1");
        await Page.WaitForURLAsync("**/files");
        await Page.SetInputFilesAsync("#files", files);
        await Page.ClickAsync("button:has-text('Add files')");
        await Page.WaitForSelectorAsync("h2:has-text('How each file is read')");
        await ShowAsync("files");
    }

    /// <summary>Answers every question with what holds until it is answered: then it is not asked again.</summary>
    public async Task AnswerWhatHoldsAnywayAsync()
    {
        ILocator questions = Page.Locator("#questions fieldset");
        int asked = await questions.CountAsync();
        if (asked == 0)
        {
            return;
        }

        for (int i = 0; i < asked; i++)
        {
            await questions.Nth(i).Locator("p.choice:has-text('(for now)') input").CheckAsync();
        }

        await Page.ClickAsync("button:text-is('Save answers')");
        await Page.WaitForLoadStateAsync();
        Assert.True(await questions.CountAsync() < asked, "an answer did not settle its question");
        await ShowAsync("answered");
    }

    /// <summary>Updates the figures and waits for the end.</summary>
    public async Task UpdateAsync(int milliseconds)
    {
        await Page.ClickAsync("button:has-text('pdate the figures') >> nth=0");
        await Page.WaitForURLAsync("**/run");
        await Page.WaitForSelectorAsync("text=See the results", new PageWaitForSelectorOptions { Timeout = milliseconds });
        await ShowAsync("done");
    }

    /// <summary>Opens every page that the menu and the results lead to, and ends at the van lists or at why there are none.</summary>
    public async Task LookAroundAsync()
    {
        foreach (string page in new[] { "files", "rows", "words", "settings", "results", "waiting", "compare", "months", "history" })
        {
            await Page.GotoAsync($"{bench.Address}/{page}");
            await ShowAsync(page);
        }

        await Page.GotoAsync(bench.Address + "/words");
        string[] lists = [.. await Page.Locator("main a[href^='/words?list']").EvaluateAllAsync<string[]>("links => links.map(l => l.getAttribute('href'))")];
        foreach (string list in lists)
        {
            await Page.GotoAsync(bench.Address + list);
            await ShowAsync("words-list");
        }

        await Page.GotoAsync(bench.Address + "/ask");
        if (Page.Url.EndsWith("/ask", StringComparison.Ordinal))
        {
            await Page.FillAsync("#complaint", "does not drain");
            await Page.ClickAsync("button:has-text('Answer')");
            await Page.WaitForURLAsync("**/answer?*");
            await ShowAsync("answer");
        }

        await Page.GotoAsync(bench.Address + "/results");
        ILocator report = Page.Locator("ul.cards a:has-text('Report of')");
        if (await report.CountAsync() > 0)
        {
            await report.ClickAsync();
            await Page.WaitForURLAsync("**/reports/*/index.html");
            await ShowAsync("report");
        }

        await Page.GotoAsync(bench.Address + "/vans");
        await ShowAsync("vans");
        Assert.True(
            await Page.Locator("table.pick tbody tr").CountAsync() > 0 || (await Page.InnerTextAsync("main")).Contains("No van list was made: ", StringComparison.Ordinal),
            "there is neither a van list nor a reason");
        await opened.PrintAsync("Letter", picture + "-vans");
    }

    private async Task ShowAsync(string name)
    {
        await opened.ShootAsync(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{picture}-{++_shown:00}-{name}"));
        await (script ? opened.AssertSoundAsync() : opened.AssertFitsAsync());
    }
}
