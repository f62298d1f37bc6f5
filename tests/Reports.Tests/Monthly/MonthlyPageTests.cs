using PartsSignal.Reports.Monthly;

namespace PartsSignal.Reports.Tests.Monthly;

public sealed class MonthlyPageTests
{
    private static readonly string[] Order =
    [
        "The month in five sentences", "What is rising", "Bad batches", "What fails most", "At what age things fail", "What came back",
        "Suppliers: quality and lead times", "What each van should carry", "How good the predictions were", "The data, and what to fill in first",
    ];

    [Fact]
    public void Render_FullMonth_SectionsInReadingOrder()
    {
        string page = MonthlyPage.Render(SampleMonth.Full().Report());
        int[] places = [.. Order.Select(h => page.IndexOf($">{h}</h2>", StringComparison.Ordinal))];
        Assert.DoesNotContain(-1, places);
        Assert.Equal(places.Order(), places);
    }

    [Fact]
    public void Render_MarkupInEveryText_IsShownAsTyped()
    {
        string page = MonthlyPage.Render(SampleMonth.Full().Report());
        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<img", page, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Render_EmptyMonth_SaysWhatIsMissingInEverySection()
    {
        string page = MonthlyPage.Render(SampleMonth.Bare(MonthFacts.None(new DateOnly(2024, 5, 1))).Report());
        Assert.All(Order, h => Assert.Contains(h, page, StringComparison.Ordinal));
        Assert.Equal(9, System.Text.RegularExpressions.Regex.Count(page, "class=\"missing\""));
        Assert.Contains("No call of May 2024 is in the files", page, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Render_MonthOfOneJob_CountsInTheSingular()
    {
        string text = SummaryText.Render(SampleMonth.Bare(SampleMonth.OneJob()).Report());
        Assert.Contains("the shop took 1 call;", text, StringComparison.Ordinal);
        Assert.Contains("The one closed repair whose visits are recorded was finished", string.Join(' ', text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
    }

    [Fact]
    public void Render_SameFacts_GivesSameBytes() =>
        Assert.Equal(MonthlyPage.Render(SampleMonth.Full().Report()), MonthlyPage.Render(SampleMonth.Full().Report()));

    [Fact]
    public void Summary_FullMonth_ReadsAsThis()
    {
        string file = Path.Combine(AppContext.BaseDirectory, "TestData", "summary-of-a-full-month.txt");
        string text = SummaryText.Render(SampleMonth.Full().Report());
        if (Environment.GetEnvironmentVariable("PARTSSIGNAL_SHOTS") is { Length: > 0 } folder)
        {
            File.WriteAllText(Path.Combine(folder, "summary.txt"), text);
        }

        Assert.Equal(File.ReadAllText(file), text);
    }
}
