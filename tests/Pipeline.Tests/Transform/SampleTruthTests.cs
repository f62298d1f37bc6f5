using PartsSignal.Pipeline.Review;

namespace PartsSignal.Pipeline.Tests.Transform;

public sealed class SampleTruthTests(LoadedSample sample, ITestOutputHelper output) : IClassFixture<LoadedSample>
{
    [Fact]
    public void Load_SampleShop_KeepsTheBooks() => Assert.All(sample.Report.Rows.Files, f => Assert.True(f.Balances, f.File));

    [Fact]
    public void Load_SampleShop_ResolvesEveryWayOfWritingANumberAndNoneWrongly() => NumbersAreRight(sample);

    [Fact]
    public void Load_SampleShop_DateCodesHoldTheTrueBuildDay() => DateCodesAreRight(sample);

    [Fact]
    public void Load_SampleShop_AsksAboutEveryNumberItCouldNotResolve()
    {
        IReadOnlyList<string> open = sample.Read("open-numbers.sql", r => r.GetString(0));
        string list = string.Join('\n', sample.List(ReviewNames.PartNumbers));
        Assert.All(open, number => Assert.Contains(number, list, StringComparison.OrdinalIgnoreCase));
        Assert.NotEmpty(open);
    }

    [SlowFact]
    public async Task Load_CommittedSample_IsAsRightAsASmallOne()
    {
        await using var committed = new LoadedSample { Committed = true };
        await committed.InitializeAsync();
        NumbersAreRight(committed);
        DateCodesAreRight(committed);
    }

    private void NumbersAreRight(LoadedSample sample)
    {
        var ways = sample.Read("numbers-against-truth.sql", r => (Way: r.GetString(0), Lines: r.GetInt64(1), Resolved: r.GetInt64(2), Wrong: r.GetInt64(3), Open: r.GetString(4)));
        Assert.All(ways, w => output.WriteLine($"{w.Way}: {w.Resolved} of {w.Lines}, {w.Wrong} wrong, open: {w.Open}"));
        Assert.All(ways, w => Assert.Equal(0, w.Wrong));
        var listed = ways.Where(w => w.Way != "in no list").ToList();
        Assert.Equal(["current", "current, other signs", "misspelt", "old", "supplier's"], listed.Select(w => w.Way));
        Assert.All(listed, w => Assert.True(w.Lines >= 5, $"{w.Way}: only {w.Lines} lines"));
        Assert.All(listed, w => Assert.True(w.Resolved >= 0.99 * w.Lines, $"{w.Way}: {w.Resolved} of {w.Lines} resolved"));
    }

    private void DateCodesAreRight(LoadedSample sample)
    {
        var dates = sample.Read("build-dates-against-truth.sql", r => (Coded: r.GetInt64(0), Held: r.GetInt64(1), Inside: r.GetInt64(2), Several: r.GetInt64(3), Told: r.GetDouble(4)))[0];
        output.WriteLine($"{dates}");
        Assert.True(dates.Coded > 500 && dates.Several > 20, $"{dates}");
        Assert.True(dates.Held >= 0.995 * dates.Coded, $"a candidate holds {dates.Held} of {dates.Coded}");
        Assert.True(dates.Inside >= 0.995 * dates.Coded, $"the interval holds {dates.Inside} of {dates.Coded}");
    }
}
