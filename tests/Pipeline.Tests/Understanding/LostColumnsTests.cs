using System.Globalization;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Understanding;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Understanding;

/// <summary>A column on which answers hang, and which neither its header nor its cells make certain, is asked about.</summary>
public sealed class LostColumnsTests : IDisposable
{
    private static readonly string[] Complaints = ["does not drain", "no heat", "leaks from the door", "makes a loud noise", "will not start", "does not spin"];
    private readonly string _folder = Directory.CreateTempSubdirectory("lost-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Inspect_VisitDayAndNoClosingDay_AsksWhetherItIsTheLastDay()
    {
        Write("jobs.csv", "Job no,Call date,Visit day,Machine type,Model,Serial,Complaint", i => $"{1000 + i},{Day(2 * i)},{Day((2 * i) + 1 + (i % 4))},washer,WX{100 + (i % 9)},SN{i * 7919 % 100000:00000}X,{Complaints[i % 6]}");
        ReadingQuestion asked = Assert.Single(Inspect().Questions, q => q.Field == "closed_on");
        Assert.Contains(asked.Choices, c => c.Value == "Visit day");
        Assert.Equal(ReadingAnswers.Nothing, asked.Default);
    }

    [Fact]
    public void Inspect_OrdersWhoseNumberHasAnUnreadableHeader_AskForIt()
    {
        Write("orders.csv", "xqz,Supplier,Ordered on,Received on,Part number,Quantity,Unit cost", i => $"EK{500 + i},{(i % 3 == 0 ? "Hollis Spares" : "Brook & Sons")},{Day(i)},{Day(i + 3 + (i % 5))},68-{1000 + (i % 40)},{1 + (i % 2)},{10 + (i % 17)}.50");
        ShopInspection found = Inspect(new() { ["orders.csv/kind"] = "part_orders" });
        Assert.True(found.Tables.Single().Map!.Columns.GetValueOrDefault("order_id") is ["xqz"] || found.Questions.Any(q => q.Choices.Any(c => c.Value == "xqz")));
    }

    [Theory]
    [InlineData("jobs.csv/field/van", "Bin", "A-0")]
    [InlineData("jobs.csv/field/van", "Location", "R")]
    public void Inspect_ShelvesInAJobLogWithoutTechnicians_AreNoVansInSilence(string key, string header, string shelf)
    {
        Write("jobs.csv", $"Job no,Opened,Closed,Machine type,Model,Serial,Complaint,{header}", i => $"{1000 + i},{Day(2 * i)},{Day((2 * i) + 3)},washer,WX{100 + (i % 9)},SN{i * 7919 % 100000:00000}X,{Complaints[i % 6]},{shelf}{1 + (i % 4)}");
        ShopInspection found = Inspect();
        Assert.True(!found.Tables.Single().Map!.Columns.ContainsKey("van") || found.Questions.Any(q => q.Key == key || q.Column == header));
    }

    [Fact]
    public void Inspect_StockWhoseNumbersAreHeadedName_OffersThemAsTheParts()
    {
        Write("stock.csv", "Kind,Name,Display name,Bin code,Location,On hand", i => $"Stock item,1500-{101000 + (i * 7)}-00,\"seal, rope, {i} mm\",PG{2000 + (i % 90)}B,{(i % 2 == 0 ? "Northby" : "Saltwick")},{i % 9}");
        ShopInspection found = Inspect(new() { ["stock.csv/kind"] = "van_counts" });
        Assert.True(found.Tables.Single().Map!.Columns.GetValueOrDefault("part") is ["Name"] || found.Questions.Any(q => q.Field == "part" && q.Choices.Any(c => c.Value == "Name")));
    }

    [Fact]
    public void Inspect_FactorsUnderOneAsPrices_AreAskedAbout()
    {
        Write("parts.csv", "Part number,Description,Base cost rate", i => $"68-{1000 + i},drain pump {i},0.{10 + (i % 80)}");
        ShopInspection found = Inspect(new() { ["parts.csv/kind"] = "parts" });
        Assert.True(!found.Tables.Single().Map!.Columns.ContainsKey("price") || found.Questions.Any(q => q.Field == "price"));
    }

    [Fact]
    public void Inspect_PiecesByMonth_AskWhetherTheyAreStock()
    {
        Write("usage.csv", "Part number,Jan 2025,Feb 2025,Mar 2025,Apr 2025,May 2025", i => $"68-{1000 + i},{i % 7},{i % 5},{i % 3},{i % 4},{i % 6}");
        ShopInspection found = Inspect();
        Assert.True(found.Tables.Single().Map?.Kind != "van_counts" || found.Questions.Any(q => q.Key == "usage.csv/kind"));
    }

    // An answer on the list of installations is none on the list of repairs, though both have a machine and a day.
    [Fact]
    public void Inspect_TwoListsOfTwoColumns_AreAskedAboutOneByOne()
    {
        Write("repairs.csv", "machine,day", i => $"M-{1000 + (i % 45)},{Day(i)}");
        Write("installations.csv", "machine,day", i => $"M-{1000 + i},{Day(3 * i)}");
        ShopInspection found = Inspect(new() { ["installations.csv/kind"] = "units" });
        Assert.Equal("units", found.Tables.Single(t => t.File == "installations.csv").Map?.Kind);
        Assert.True(found.Questions.Any(q => q.Key == "repairs.csv/kind") || found.Tables.Single(t => t.File == "repairs.csv").Map?.Kind == "jobs");
    }

    [Fact]
    public void Inspect_YearsOfATinyLog_TakeOneAnswerForAll()
    {
        Write("log 2024.csv", "machine,day", i => $"M-{1000 + (i % 45)},{Day(i)}");
        Write("log 2025.csv", "machine,day", i => $"M-{1000 + (i % 45)},{Day(i + 366)}");
        Assert.All(Inspect(new() { ["log 2024.csv/kind"] = "jobs" }).Tables, t => Assert.Equal("jobs", t.Map?.Kind));
    }

    private void Write(string name, string header, Func<int, string> row) =>
        File.WriteAllText(Path.Combine(_folder, name), header + "\n" + string.Concat(Enumerable.Range(1, 180).Select(i => row(i) + "\n")));

    private ShopInspection Inspect(Dictionary<string, string>? answers = null) =>
        new Inspector(new ReadingLimits(), WordSets.Load(null), answers).Inspect(ShopTables.In(_folder, new ReadingLimits()), TestContext.Current.CancellationToken);

    private static string Day(int i) => new DateOnly(2024, 1, 2).AddDays(i).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
