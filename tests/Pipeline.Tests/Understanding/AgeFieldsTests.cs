using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Understanding;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Understanding;

/// <summary>Columns with ages: found, and their unit told by the header, proved by dates, or asked.</summary>
public sealed class AgeFieldsTests
{
    private static readonly string[] Complaints = ["does not drain", "leaks at the door", "no heat", "loud noise when spinning"];

    [Theory]
    [InlineData("Age (months)", "age_months")]
    [InlineData("Alter in Monaten", "age_months")]
    [InlineData("Age in days", "age_days")]
    [InlineData("Age in years", "age_years")]
    public void Inspect_HeaderThatNamesTheUnit_IsTakenAtItsWord(string header, string field)
    {
        (SourceMap map, IReadOnlyList<ReadingQuestion> questions) = Log(header, i => 5 + (i % 90));
        Assert.Equal([header], map.Columns[field]);
        Assert.Single(map.Columns, c => c.Key.StartsWith("age_", StringComparison.Ordinal));
        Assert.DoesNotContain(questions, q => q.Column == header);
    }

    [Theory]
    [InlineData(12, "age_months")]
    [InlineData(1, "age_years")]
    public void Inspect_AgesThatAgreeWithPurchaseDates_NeedNoQuestion(double perYear, string field)
    {
        (SourceMap map, IReadOnlyList<ReadingQuestion> questions) = Log("Age", i => (int)(perYear * (2 + (i % 30))), i => new DateOnly(2025, 1, 6).AddDays(i - (int)(365.25 * (2 + (i % 30)))));
        Assert.Equal(["Age"], map.Columns[field]);
        Assert.DoesNotContain(questions, q => q.Column == "Age");
    }

    [Fact]
    public void Inspect_AgesThatCouldBeMonths_AreAsked()
    {
        (SourceMap map, IReadOnlyList<ReadingQuestion> questions) = Log("Age", i => 5 + (i % 90));
        ReadingQuestion asked = Assert.Single(questions, q => q.Column == "Age");
        Assert.Equal(["age_years", "age_months", "age_days", "none"], asked.Choices.Select(c => c.Value));
        Assert.Equal("age_months", asked.Default);
        Assert.Equal(["Age"], map.Columns["age_months"]);
    }

    [Fact]
    public void Inspect_AnsweredUnit_IsHeeded()
    {
        (SourceMap map, IReadOnlyList<ReadingQuestion> questions) = Log("Age", i => 5 + (i % 90), null, ("jobs.csv/column/Age", "age_days"));
        Assert.Equal(["Age"], map.Columns["age_days"]);
        Assert.DoesNotContain(questions, q => q.Column == "Age");
    }

    [Fact]
    public void Inspect_YoungAges_AreYears()
    {
        (SourceMap map, IReadOnlyList<ReadingQuestion> questions) = Log("Age", i => 1 + (i % 16));
        Assert.Equal(["Age"], map.Columns["age_years"]);
        Assert.DoesNotContain(questions, q => q.Column == "Age");
    }

    [Fact]
    public void Inspect_RegisterWithAgesInMonths_AsksAndFindsThePurchaseDate()
    {
        IEnumerable<string> rows = Enumerable.Range(0, 120).Select(i => $"SN{40000 + (i * 17)},Orvane,WE-{100 + (i % 5)},Washer,{new DateOnly(2015, 1, 6).AddDays(i * 20):yyyy-MM-dd},{new DateOnly(2015, 3, 1).AddDays(i * 20):yyyy-MM-dd},{6 + (i % 100)}");
        (SourceMap map, IReadOnlyList<ReadingQuestion> questions) = Inspect("register.csv", ["Serial number,Brand,Model,Appliance,Purchase date,Installed,Age", .. rows]);
        Assert.Equal("units", map.Kind);
        Assert.Equal(["Purchase date"], map.Columns["purchased_on"]);
        Assert.Equal(["Installed"], map.Columns["installed_on"]);
        Assert.Equal("age_months", Assert.Single(questions, q => q.Column == "Age").Default);
    }

    private static (SourceMap Map, IReadOnlyList<ReadingQuestion> Questions) Log(string header, Func<int, int> age, Func<int, DateOnly>? bought = null, params (string Key, string Choice)[] answers)
    {
        IEnumerable<string> rows = Enumerable.Range(0, 120).Select(i =>
            $"{1000 + i},{new DateOnly(2025, 1, 6).AddDays(i):yyyy-MM-dd},{new DateOnly(2025, 1, 7).AddDays(i + (i % 4)):yyyy-MM-dd},Washer,{Complaints[i % 4]},{(i % 3 == 0 ? "no fault found" : "part replaced")},QX-{10500 + (i % 7)},{bought?.Invoke(i):yyyy-MM-dd},{age(i)}");
        return Inspect("jobs.csv", [$"Job number,Date opened,Date closed,Appliance,Complaint,Outcome,Part number,Purchase date,{header}", .. rows], answers);
    }

    private static (SourceMap Map, IReadOnlyList<ReadingQuestion> Questions) Inspect(string file, string[] lines, params (string Key, string Choice)[] answers)
    {
        DirectoryInfo shop = Directory.CreateTempSubdirectory("partssignal-ages-");
        File.WriteAllLines(Path.Combine(shop.FullName, file), lines);
        ShopInspection seen = new Inspector(new ReadingLimits(), WordSets.Load(null), answers.ToDictionary(a => a.Key, a => a.Choice)).Inspect(ShopTables.In(shop.FullName, new ReadingLimits()), CancellationToken.None);
        shop.Delete(recursive: true);
        return (Assert.Single(seen.Tables).Map!, seen.Questions);
    }
}
