using System.Globalization;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Understanding;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Understanding;

/// <summary>Rows and relations decide where headers and weights mislead: each table here was once read wrong in silence, or left out.</summary>
public sealed class MendedReadingTests : IDisposable
{
    private static readonly string[] Complaints = ["does not drain", "no heat", "leaks from the door", "makes a loud noise", "will not start", "does not spin"];
    private static readonly string[] Parts = ["drain pump", "door seal", "drive belt", "door lock", "inlet valve", "control board", "carbon brushes", "shock absorber"];
    private readonly string _folder = Directory.CreateTempSubdirectory("mended-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Inspect_TotalBesideThePriceOfOnePiece_ThePriceOfOnePieceIsRead()
    {
        Jobs();
        Write("used.csv", "Job no,Part number,Description,Quantity,E-price,G-price", i => $"{1000 + i},68-{1000 + (i % 8)},{Parts[i % 8]},{1 + (i % 3)},{Price(i)},{Price(i, 1 + (i % 3))}");
        Assert.Equal(["E-price"], Map("used.csv").Columns["price"]);
    }

    [Fact]
    public void Inspect_WholePiecesWrittenWithDecimals_AreAQuantity()
    {
        Jobs();
        Write("used.csv", "Job no,Part number,Description,Quantity", i => $"{1000 + i},68-{1000 + (i % 8)},{Parts[i % 8]},{1 + (i % 2)}.00");
        Assert.Equal(["Quantity"], Map("used.csv").Columns["quantity"]);
    }

    [Fact]
    public void Inspect_MorePiecesOrderedThanDelivered_OrderedPiecesAreRead()
    {
        Write("orders.csv", "Order no,Supplier,Ordered on,Received on,Part number,Asked,Pieces,Unit cost", i => $"EK{500 + i},{(i % 3 == 0 ? "Hollis Spares" : "Brook & Sons")},{Day(i)},{Day(i + 3)},68-{1000 + (i % 40)},{2 + (i % 3)},{(i % 9 == 0 ? 1 : 2 + (i % 3))},{Price(i)}");
        Assert.Equal(["Asked"], Map("orders.csv").Columns["quantity"]);
    }

    [Fact]
    public void Inspect_NamesUnderAHeadingOfNumbers_TheCodesAreThePartNumbers()
    {
        Write("prices.csv", "No.,Part,Price", i => $"KM-{1000 + i},{Parts[i % 8]},{Price(i)}", 60);
        SourceMap map = Map("prices.csv", new() { ["prices.csv/kind"] = "parts" });
        Assert.Equal(["No."], map.Columns["part"]);
        Assert.Equal(["Part"], map.Columns["description"]);
    }

    [Fact]
    public void Inspect_OrderLinesThatNameTheJob_ItIsNoNumberOfAnOrder()
    {
        Jobs("WB");
        Write("orders.csv", "Buying no,Supplier,Ordered on,Received on,Part number,Quantity,Unit cost,Job no", i => $"EK{500 + i},{(i % 3 == 0 ? "Hollis Spares" : "Brook & Sons")},{Day(i)},{Day(i + 3)},68-{1000 + (i % 40)},1,{Price(i)},WB{1000 + i}");
        ShopInspection found = Inspect(new() { ["orders.csv/kind"] = "part_orders" });
        SourceMap map = found.Tables.Single(t => t.File == "orders.csv").Map!;
        Assert.Equal(["Job no"], map.Columns["job_id"]);
        Assert.True(map.Columns.GetValueOrDefault("order_id") is ["Buying no"] || found.Questions.Any(q => q.Field == "order_id" && q.Choices.Any(c => c.Value == "Buying no")));
    }

    [Theory]
    [InlineData("P/code", "M14 {0}AB")]
    [InlineData("Code", "80-99{0}")]
    [InlineData("PC", "379{0} TZ")]
    public void Inspect_Postcodes_AreNoCodesOfErrorsOrParts(string header, string code)
    {
        Write("jobs.csv", $"Job no,Call date,Date done,{header},Machine type,Model,Complaint", i => $"{1000 + i},{Day(2 * i)},{Day((2 * i) + 2)},{string.Format(CultureInfo.InvariantCulture, code, i % 8)},washer,WX{100 + (i % 9)},{Complaints[i % 6]}");
        Assert.DoesNotContain(Map("jobs.csv").Columns, c => c.Value.Contains(header) && c.Key is "error_code" or "part" or "model" or "serial");
    }

    [Fact]
    public void Inspect_AmountsThatMeetThePriceList_AreNoPartNumbers()
    {
        Write("prices.csv", "Part number,Description,Dealer price", i => $"68-{1000 + i},{Parts[i % 8]} {i},{Price(i)}");
        Write("orders.csv", "Order no,Supplier,Ordered on,Received on,Item text,Quantity,Ext", i => $"EK{500 + i},Hollis Spares,{Day(i)},{Day(i + 3)},{Parts[i % 8]} {i % 40},1,{Price(i % 40)}");
        Assert.DoesNotContain(Map("orders.csv").Lists, l => l.Value.Code == "Dealer price");
        Assert.False(Map("orders.csv").Columns.TryGetValue("part", out IReadOnlyList<string>? part) && part.Contains("Ext"));
    }

    [Fact]
    public void Inspect_LinesOfInvoicesThatNameJobsAndParts_ArePartLines()
    {
        Jobs("WB");
        Write("prices.csv", "Part number,Description,Price", i => $"68-{1000 + i},{Parts[i % 8]},{Price(i)}", 60);
        Write("sales.csv", "Type,Date,Num,P. O. #,Name,Item,Memo,Qty,Sales Price,Amount", i => $"Invoice,{Day(i / 2)},{20_000 + (i / 2)},WB{1001 + (i / 2)},\"Doe {i / 2}, Ann\",68-{1001 + (i % 48)},{Parts[(i + 1) % 8]},1,{Price(i)},{Price(i)}");
        SourceMap map = Map("sales.csv");
        Assert.Equal("job_parts", map.Kind);
        Assert.Equal(["Item"], map.Columns["part"]);
    }

    [Fact]
    public void Inspect_PiecesInColumnsHeadedByNames_AreCounts()
    {
        Write("prices.csv", "Part number,Description,Price", i => $"68-{1000 + i},{Parts[i % 8]},{Price(i)}", 60);
        Write("check.csv", "Stk no,What,Gaz,Steve,Shop", i => $"68-{1000 + i},{Parts[i % 8]},{i % 4},{i % 3},{i % 5}", 40);
        Assert.Equal("van_counts", Map("check.csv").Kind);
    }

    [Fact]
    public void Inspect_HoursOfWorkAmongPieces_ThePiecesAreStillAQuantity()
    {
        Jobs();
        Write("used.csv", "Job no,Part number,Description,Qty", i => i % 2 == 0 ? $"{1000 + (i / 2)},L1,Labor,0.5" : $"{1000 + (i / 2)},68-{1000 + (i % 8)},{Parts[i % 8]},{1 + (i % 3)}");
        Assert.Equal(["Qty"], Map("used.csv").Columns["quantity"]);
    }

    [Fact]
    public void Inspect_DayThatFewCallsHave_IsNotTheDayOfTheCall()
    {
        Write("jobs.csv", "Job no,Taken in,Machine type,Model,Complaint,Ready,Start OK'd", i => $"{1000 + i},{Day(2 * i)},washer,WX{100 + (i % 9)},{Complaints[i % 6]},{Day((2 * i) + 4)},{(i % 6 == 0 ? Day((2 * i) + 1) : "")}");
        Assert.Equal(["Taken in"], Map("jobs.csv", new() { ["jobs.csv/kind"] = "jobs" }).Columns["opened_on"]);
    }

    [Fact]
    public void Inspect_NumberOfTheRowBesideTheNumberOfTheJob_TheJobIsReadByItsOwn()
    {
        Write("jobs.csv", "id,work_order_no,opened_date,equipment_type,model,problem,finish_date", i => $"r-{i * 7919 % 100000:x5},{45000 + (i * 3)},{Day(2 * i)},washer,WX{100 + (i % 9)},{Complaints[i % 6]},{Day((2 * i) + 2)}");
        Assert.Equal(["work_order_no"], Map("jobs.csv", new() { ["jobs.csv/kind"] = "jobs" }).Columns["job_id"]);
    }

    [Fact]
    public void Inspect_NumberOfTheMachineBesideItsSerial_TheSerialIsRead()
    {
        Write("machines.csv", "Asset ID,Make,Model,Serial No.,Installed", i => $"AP-{100 + i},Kestona,WX{100 + (i % 9)},SN{i * 7919 % 100000:00000}X,{Day(i)}");
        Write("jobs.csv", "Job no,Call date,Date done,Machine type,Asset ID,Serial No.,Complaint", i => $"{1000 + i},{Day(2 * i)},{Day((2 * i) + 2)},washer,AP-{100 + (i % 90)},SN{i % 90 * 7919 % 100000:00000}X,{Complaints[i % 6]}");
        Assert.Equal(["Serial No."], Map("machines.csv", new() { ["machines.csv/kind"] = "units" }).Columns["serial"]);
    }

    [Fact]
    public void Inspect_NumberOfADealerBesideANamedPart_ThePartsOwnNumberIsRead()
    {
        Write("claims.csv", "Job no,Svcr no,Call date,Date done,Machine type,Complaint,Part fail no,Part description", i => $"{1000 + i},{41000 + (i % 4)},{Day(2 * i)},{Day((2 * i) + 2)},washer,{Complaints[i % 6]},{(i % 5 == 0 ? "," : $"K{10000 + (i % 8 * 731)},{Parts[i % 8]}")}");
        Assert.Equal(["Part fail no"], Map("claims.csv", new() { ["claims.csv/kind"] = "jobs" }).Columns["part"]);
    }

    [Fact]
    public void Inspect_PartsOnLinesOfTheirOwn_AnUnnamedColumnOfTheLogIsNoPart()
    {
        string[] machines = ["push mwr", "rider", "trimmer", "chain cutter", "blower"];
        Write("jobs.csv", "Ticket no,Call date,Date done,What,Complaint", i => $"{1000 + i},{Day(2 * i)},{Day((2 * i) + 2)},{machines[i % 5]},{Complaints[i % 6]}");
        Write("used.csv", "Ticket no,Part number,Description,Quantity", i => $"{1001 + (i % 150)},68-{1000 + (i % 8)},{Parts[i % 8]},1");
        Assert.DoesNotContain(Map("jobs.csv").Columns, c => c.Value.Contains("What") && c.Key is "part" or "description" or "parts_list");
    }

    private void Jobs(string prefix = "", string technician = "Pat") =>
        Write("jobs.csv", "Job no,Call date,Date done,Technician,Machine type,Model,Serial,Complaint", i => $"{prefix}{1000 + i},{Day(2 * i)},{Day((2 * i) + 2)},{(i % 2 == 0 ? technician : "Hugo")},washer,WX{100 + (i % 9)},SN{i * 7919 % 100000:00000}X,{Complaints[i % 6]}");

    private void Write(string name, string header, Func<int, string> row, int rows = 180) =>
        File.WriteAllText(Path.Combine(_folder, name), header + "\n" + string.Concat(Enumerable.Range(1, rows).Select(i => row(i) + "\n")));

    [Fact]
    public void Inspect_WordsForMachinesUnderAnotherHeading_AreTheType()
    {
        string[] types = ["washing machine", "fridge", "dishwasher", "tumble dryer", "oven"];
        Write("jobs.csv", "No,Rang,Township,What,Complaint,Finished on", i => $"{1000 + i},{Day(2 * i)},{(i % 2 == 0 ? "Northby" : "Saltwick")},{types[i % 5]},{Complaints[i % 6]},{Day((2 * i) + 2)}");
        Assert.Equal(["What"], Map("jobs.csv", new() { ["jobs.csv/kind"] = "jobs" }).Columns["appliance_type"]);
    }

    [Fact]
    public void Inspect_PiecesStillToCome_AreNotTheQuantity()
    {
        Write("orders.csv", "Order no,Supplier,Ordered on,Received on,Part number,Asked,Quantity B/O,Unit cost", i => $"EK{500 + i},{(i % 3 == 0 ? "Hollis Spares" : "Brook & Sons")},{Day(i)},{Day(i + 3)},68-{1000 + (i % 40)},{1 + (i % 3)},{(i % 11 == 0 ? 1 : 0)},{Price(i)}");
        Assert.Equal(["Asked"], Map("orders.csv", new() { ["orders.csv/kind"] = "part_orders" }).Columns["quantity"]);
    }

    [Fact]
    public void Inspect_WhatCustomersSay_IsNoCustomersName()
    {
        Write("jobs.csv", "Job no,Call date,Date done,Technician,Machine type,Model,Serial,CUST_STATES", i => $"{1000 + i},{Day(2 * i)},{Day((2 * i) + 2)},Pat,washer,WX{100 + (i % 9)},SN{i * 7919 % 100000:00000}X,{Complaints[i % 6]}");
        SourceMap map = Map("jobs.csv");
        Assert.False(map.Columns.TryGetValue("customer_name", out IReadOnlyList<string>? names) && names.Contains("CUST_STATES"));
        Assert.Equal(["CUST_STATES"], map.Columns["complaint"]);
    }

    [Fact]
    public void Inspect_LineNumbersBesideJobNumbers_TheLinesAreNotTheJobs()
    {
        Jobs();
        Write("used.csv", "Line id,Key,Part number,Description,Quantity", i => $"{90000 + (3 * i)},{1000 + (1 + (i % 90))},68-{1000 + (i % 8)},{Parts[i % 8]},1");
        Assert.Equal(["Key"], Map("used.csv", new() { ["used.csv/kind"] = "job_parts" }).Columns["job_id"]);
    }

    [Theory]
    [InlineData("Van 1 (Dave),Van 2 (Moh),Shed,Total")]
    [InlineData("Verena,Robin,Shed,Total")]
    public void Inspect_CountsSideBySide_EachIsAVanAndTheirSumIsNone(string places)
    {
        Jobs(technician: "Verena");
        Write("stock.csv", "Part number,Name," + places, i => $"68-{1000 + i},{Parts[i % 8]},{i % 4},{i % 3},{i % 7},{(i % 4) + (i % 3) + (i % 7)}", 60);
        ShopInspection found = Inspect(new() { ["stock.csv/kind"] = "van_counts" });
        Assert.Equal(places.Split(',')[..3], found.Tables.Single(t => t.File == "stock.csv").Map!.Columns["on_hand"]);
        Assert.DoesNotContain(found.Questions, q => q.Field is "van" or "on_hand");
    }

    [Fact]
    public void Inspect_CountedOnADayInPlacesWithoutPlainHeadings_DayAndPlaceAreRead()
    {
        string[] places = ["van 1", "van 2", "depot"];
        Write("count.csv", "when,where at,Part number,pcs", i => $"{Day(i / 20)},{places[i % 3]},68-{1000 + i},{i % 5}", 60);
        SourceMap map = Map("count.csv", new() { ["count.csv/kind"] = "van_counts" });
        Assert.Equal(["where at"], map.Columns["van"]);
        Assert.Equal(["when"], map.Columns["counted_on"]);
    }

    [Fact]
    public void Questions_OnNumbersThatOtherTablesUse_AreNotAsked()
    {
        Jobs("WB");
        Write("articles.csv", "Article no,Maker's no,Description,Sale price", i => $"A{5000 + i},{Parts[i % 8][..2].ToUpperInvariant()}-{90000 + (i * 7)},{Parts[i % 8]},{Price(i)}", 60);
        Write("used.csv", "Line,Job no,Article no,Quantity", i => $"{i},WB{1001 + (i % 90)},A{5001 + (i % 60)},1");
        Assert.DoesNotContain(Inspect().Questions, q => (q.File == "articles.csv" && q.Field == "part") || (q.File == "used.csv" && (q.Field is "part" or "job_id")));
    }

    [Fact]
    public void Questions_OnDaysAndShortNumbers_ShowThemAsTheyAre()
    {
        Write("jobs.csv", "No,Rang,Going,What,Reckons,S", i => $"{100 + i},{Day(2 * i)},{Day((2 * i) + 2)},washer,{Complaints[i % 6]},{i % 3}");
        ReadingQuestion[] asked = [.. Inspect(new() { ["jobs.csv/kind"] = "jobs" }).Questions.Where(q => q.Column is "Rang" or "Going" or "No")];
        Assert.NotEmpty(asked);
        Assert.All(asked, q => Assert.DoesNotContain(q.Examples, e => e.Contains("000", StringComparison.Ordinal)));
    }

    private ShopInspection Inspect(Dictionary<string, string>? answers = null) =>
        new Inspector(new ReadingLimits(), WordSets.Load(null), answers).Inspect(ShopTables.In(_folder, new ReadingLimits()), TestContext.Current.CancellationToken);

    private SourceMap Map(string file, Dictionary<string, string>? answers = null) => Inspect(answers).Tables.Single(t => t.File == file).Map!;

    private static string Day(int days) => new DateOnly(2023, 1, 2).AddDays(days).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Price(int i, int pieces = 1) => (pieces * (8.35m + (i * 37 % 91))).ToString("0.00", CultureInfo.InvariantCulture);
}
