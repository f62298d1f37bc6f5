using System.Globalization;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Understanding;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Understanding;

public sealed class QuestionTests
{
    private const string Log = "Job;Opened;Complaint;Model\n1;13.08.2026;no heat at all;WX100-1\n2;14.08.2026;leaks from door;WX100-2\n3;15.08.2026;does not spin;DR200-1\n";

    [Theory]
    [InlineData("12 Mill Lane, Ada", "00 xxxx xxxx, xxx")]
    [InlineData("+49 555 0107", "+00 000 0000")]
    public void Mask_Cell_ShowsItsFormOnly(string cell, string masked) => Assert.Equal(masked, MaskedCells.Mask(cell));

    [Fact]
    public void Answer_Kind_IsHeeded()
    {
        ShopInspection found = Inspect(Log, new() { ["log.csv/kind"] = "none" });
        Assert.Null(found.Tables.Single().Map);
        Assert.Empty(found.Questions);
    }

    [Fact]
    public void Answer_Field_TakesThatColumnAndNoOtherFieldDoes()
    {
        ShopInspection found = Inspect(Log, new() { ["log.csv/kind"] = "jobs", ["log.csv/field/serial"] = "Model" });
        SourceMap map = found.Tables.Single().Map!;
        Assert.Equal("Model", map.Columns["serial"].Single());
        Assert.DoesNotContain("model", map.Columns.Keys);
        Assert.DoesNotContain(found.Questions, q => q.Field == "serial");
    }

    [Fact]
    public void Answer_ColumnGivesNothing_IsNotRead()
    {
        ShopInspection found = Inspect(Log, new() { ["log.csv/kind"] = "jobs", ["log.csv/column/Complaint"] = "none" });
        Assert.DoesNotContain("Complaint", found.Tables.Single().Map!.Columns.Values.SelectMany(h => h));
    }

    [Fact]
    public void Answer_Dates_OrderTheDates() =>
        Assert.Equal("mdy", Inspect(Log, new() { ["log.csv/kind"] = "jobs", ["log.csv/dates"] = "mdy" }).Tables.Single().Map!.DateOrder);

    [Theory]
    [InlineData("Faulty part", "fault_component", "drain pump", "inlet valve", "door lock")]
    [InlineData("Part supplier", "supplier", "Northgate", "Hollis Spares", "Brook")]
    public void Questions_ColumnSettledByItsName_IsNotAskedAbout(string header, string field, params string[] cells)
    {
        string[] complaints = ["does not drain", "no water", "does not heat", "loud noise when it spins", "shows E20 and stops"];
        string[] parts = ["68-1", "47-22", "90-3", "11-0"];
        string log = $"Job no,Opened,Appliance,Model,Complaint,Part number,{header}\n" + string.Concat(Enumerable.Range(0, 60).Select(i =>
            string.Create(CultureInfo.InvariantCulture, $"{1000 + i},2026-{1 + (i % 9):00}-{1 + (i % 28):00},washer,WX{100 + (i % 7)},{complaints[i % 5]},{parts[i * 5 % 4]},{cells[i * 7 % 11 % 3]}\n")));
        ShopInspection found = Inspect(log, []);
        Assert.Equal(header, found.Tables.Single().Map!.Columns[field].Single());
        Assert.DoesNotContain(found.Questions, q => q.Column == header);
    }

    [Fact]
    public void Questions_OfAnyShop_AreFewAndAnswerable()
    {
        ShopInspection found = Inspect("a;b;c\nx1;13.08.2026;q w e\nx2;14.08.2026;r t y\nx3;15.08.2026;u i o\n", []);
        Assert.InRange(found.Questions.Count, 0, QuestionMaker.Most);
        Assert.All(found.Questions, q =>
        {
            Assert.Contains(q.Choices, c => c.Value == q.Default);
            Assert.StartsWith("log.csv/", q.Key, StringComparison.Ordinal);
            Assert.InRange(q.Examples.Count, 0, 3);
        });
    }

    [Fact]
    public void Questions_AboutYearsOfOneLog_NameThemAll()
    {
        static string Day(int year, int day) => new DateOnly(year, 1, 4).AddDays(day).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        string[] complaints = ["does not drain", "no water", "leaks at the door", "does not spin"];
        string Year(int year) => "Job no,Opened,Invoice date,Appliance,Model,Complaint,Part number\n" + string.Concat(Enumerable.Range(0, 60).Select(i =>
            string.Create(CultureInfo.InvariantCulture, $"{(year * 1000) + i},{Day(year, 5 * i)},{Day(year, (5 * i) + 2 + (i % 5))},washer,WX{100 + (i % 7)},{complaints[i * 7 % 4]},68-{i * 5 % 4}\n")));
        using var folder = new Scratch();
        File.WriteAllText(folder.Sub("log 2024.csv"), Year(2024));
        File.WriteAllText(folder.Sub("log 2025.csv"), Year(2025));
        ShopInspection found = new Inspector(new ReadingLimits(), WordSets.Load(null)).Inspect(ShopTables.In(folder.Path, new ReadingLimits()), CancellationToken.None);
        ReadingQuestion asked = Assert.Single(found.Questions, q => q.Field == "closed_on");
        Assert.EndsWith("Your answer also applies to 'log 2025.csv'.", asked.Text, StringComparison.Ordinal);
        Assert.Equal([("log 2025.csv", null)], asked.Also);
    }

    [Fact]
    public void Questions_TwoColumnsThatCompete_AreShownByRowsInWhichTheyDiffer()
    {
        const string Days = "Job;Received;Completed\n1;2024-01-09;2024-01-09\n2;2024-01-29;2024-01-30\n3;2024-02-11;\n4;2024-02-12;2024-02-15\n5;2024-03-01;2024-03-02\n";
        using var folder = new Scratch();
        File.WriteAllText(folder.Sub("log.csv"), Days);
        SampledTable table = TableSampler.Read(ShopTables.In(folder.Path, new ReadingLimits()).Single(), new ReadingLimits(), CancellationToken.None).Single();
        var reading = new TableReading(table, "log.csv", "jobs", [("jobs", 1)], null, [new ColumnDoubt("closed_on", 2, [2, 1], 1)]);
        ReadingQuestion asked = Assert.Single(QuestionMaker.Of([reading], []).Questions);
        Assert.Equal(["Completed 2024-01-30, Received 2024-01-29", "Completed 2024-02-15, Received 2024-02-12"], asked.Examples);
    }

    [Theory]
    [InlineData("jobs", "description", -1, "description", true)]
    [InlineData("jobs", "description", -1, "part", false)]
    [InlineData("jobs", "description", 1, "description", false)]
    [InlineData("jobs", "complaint", -1, "description", false)]
    [InlineData("job_parts", "description", -1, "description", false)]
    public void Questions_FieldOfAPart_IsGivenByATableOfPartLinesThatHasIt(string kind, string field, int chosen, string lineField, bool given)
    {
        static SourceMap Map(string kind, string field) => new() { Files = "a.csv", Kind = kind, Columns = new Dictionary<string, IReadOnlyList<string>> { [field] = ["A"] } };
        SourceMap asked = Map(kind, "job_id");
        Assert.Equal(given, Inspector.IsGivenByPartLines(new ColumnDoubt(field, chosen, [1], 1), asked, [asked, null, Map("job_parts", lineField)]));
        Assert.False(Inspector.IsGivenByPartLines(new ColumnDoubt(field, chosen, [1], 1), asked, [asked]));
    }

    [Theory]
    [InlineData("parts", "RÉF 555-0178, PIÈCE 555-0190")]
    [InlineData("jobs", "RÉF 000-0000, PIÈCE 000-0000")]
    public void Questions_NumbersThatLookLikePhones_AreShownWhereTheTableHoldsNoCustomers(string kind, string shown)
    {
        using var folder = new Scratch();
        File.WriteAllText(folder.Sub("log.csv"), "RÉF;PIÈCE\n555-0178;555-0190\n555-0142;555-0143\n");
        SampledTable table = TableSampler.Read(ShopTables.In(folder.Path, new ReadingLimits()).Single(), new ReadingLimits(), CancellationToken.None).Single();
        var reading = new TableReading(table, "log.csv", kind, [(kind, 1)], null, [new ColumnDoubt("part", 0, [0, 1], 1)]);
        Assert.Equal(shown, Assert.Single(QuestionMaker.Of([reading], []).Questions).Examples[0]);
    }

    [Fact]
    public void Preview_PartNumbersAndColumnsThatAreNotRead_AreNoPhoneNumbers()
    {
        string[] parts = ["339-4587 - door seal", "885-3603, 339-4587 x2", "call Ada Merrin 555-0178"];
        string log = "Job no;Opened;Complaint;Parts fitted;Guid\n" + string.Concat(Enumerable.Range(0, 60).Select(i => string.Create(
            CultureInfo.InvariantCulture, $"{24000 + i};2024-0{1 + (i % 9)}-11;does not drain;{parts[i % 3]};5a407d8{i % 10}-0a35-{1000 + i}-9f22\n")));
        Inspection table = Inspect(log, new() { ["log.csv/kind"] = "jobs", ["log.csv/field/parts_list"] = "Parts fitted", ["log.csv/column/Guid"] = "none" }).Tables.Single();
        Assert.Equal(parts[..2], table.Preview.Value.Take(2).Select(r => r[3]));
        Assert.DoesNotContain("555-0178", table.Preview.Value[2][3], StringComparison.Ordinal);
        Assert.All(table.Preview.Value, r => Assert.DoesNotContain('[', r[4]));
    }

    [Fact]
    public void Preview_Brands_AreShownAsTyped()
    {
        string list = "Serial number;Model;Brand;Customer;Installed\n" + string.Concat(Enumerable.Range(0, 40).Select(i => string.Create(
            CultureInfo.InvariantCulture, $"4{i:00}7731{i:00};WX100-{i % 4};{(i == 1 ? "Tollgrave" : "Quellmark")};Ada Merrin;2024-0{1 + (i % 9)}-11\n")));
        Inspection table = Inspect(list, new() { ["log.csv/kind"] = "units", ["log.csv/field/brand"] = "Brand", ["log.csv/field/customer_name"] = "Customer" }).Tables.Single();
        Assert.Equal(["Quellmark", "Tollgrave", "Quellmark"], table.Preview.Value.Select(r => r[2]));
        Assert.All(table.Preview.Value, r => Assert.Equal(("000000000", "xxx xxxxxx"), (r[0], r[3])));
    }

    [Fact]
    public void Save_MapThatStands_StaysAndThePreviousFileIsKept()
    {
        using var folder = new Scratch();
        File.WriteAllText(folder.Sub("log.csv"), Log);
        const string Own = """{ "shop": "Mine", "sources": [ { "files": "log.csv", "kind": "jobs", "columns": { "opened_on": "Opened", "complaint": "Model" } } ] }""";
        File.WriteAllText(folder.Sub("shop.json"), Own);
        ShopInspection found = Inspect(Log, []);
        string said = ProposedMaps.Save(folder.Path, found, new Dictionary<string, string>(), write: true, () => found);
        Assert.Equal("Model", ShopFile.Load(folder.Path).Sources.Single().Columns["complaint"].Single());
        Assert.Contains("stays", said, StringComparison.Ordinal);

        var answer = new Dictionary<string, string> { ["log.csv/field/complaint"] = "Complaint" };
        ProposedMaps.Save(folder.Path, Inspect(Log, answer), answer, write: true, () => found);
        ShopSettings settled = ShopFile.Load(folder.Path);
        Assert.Equal("Complaint", settled.Sources.Single().Columns["complaint"].Single());
        Assert.Equal(answer, settled.Answers);
        Assert.True(File.Exists(folder.Sub(ShopFileWriter.PreviousName)));
    }

    [Fact]
    public void Save_AnswerOnAMapThatAPersonWrote_ChangesOnlyWhatIsAnswered()
    {
        using var folder = new Scratch();
        File.WriteAllText(folder.Sub("log.csv"), Log);
        const string Own = """{ "shop": "Mine", "sources": [ { "files": "log.csv", "kind": "jobs", "jobPrefix": "A-", "columns": { "opened_on": "Opened", "complaint": "Model" } } ] }""";
        File.WriteAllText(folder.Sub("shop.json"), Own);
        var answers = new Dictionary<string, string> { ["log.csv/dates"] = "mdy", ["log.csv/column/Model"] = "model" };
        ProposedMaps.Save(folder.Path, Inspect(Log, answers), answers, write: false, () => Inspect(Log, []));
        SourceMap map = ShopFile.Load(folder.Path).Sources.Single();
        Assert.Equal("A-", map.JobPrefix);
        Assert.Equal("mdy", map.DateOrder);
        Assert.Equal(["model", "opened_on"], map.Columns.Keys.Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("log.csv/kind", "none", 0)]
    [InlineData("log.csv/field/complaint", "Complaint", 1)]
    [InlineData("other.csv/kind", "none", 1)]
    public void Complete_AnswersBesideAMap_AreHeeded(string key, string choice, int maps)
    {
        using var folder = new Scratch();
        File.WriteAllText(folder.Sub("log.csv"), Log);
        File.WriteAllText(folder.Sub("shop.json"), $$"""{ "shop": "Mine", "answers": { "{{key}}": "{{choice}}" }, "sources": [ { "files": "log.csv", "kind": "jobs", "columns": { "opened_on": "Opened", "complaint": "Model" } } ] }""");
        IReadOnlyList<SourceMap> read = ProposedMaps.Complete(folder.Path, ShopFile.Load(folder.Path), CancellationToken.None).Settings.Sources;
        Assert.Equal(maps, read.Count);
        Assert.All(read, m => Assert.Equal(key.EndsWith("complaint", StringComparison.Ordinal) ? "Complaint" : "Model", m.Columns["complaint"].Single()));
    }

    [Fact]
    public void Dates_ThatCanBeReadTwoWays_AreAskedAboutUntilAnswered()
    {
        const string Open = "Job;Opened;Complaint;Model\n1;03.08.2026;no heat at all;WX100-1\n2;04.08.2026;leaks from door;WX100-2\n3;05.08.2026;does not spin;DR200-1\n";
        var kind = new Dictionary<string, string> { ["log.csv/kind"] = "jobs", ["log.csv/field/opened_on"] = "Opened" };
        ReadingQuestion question = Assert.Single(Inspect(Open, kind).Questions, q => q.Key == "log.csv/dates");
        Assert.Equal(["dmy", "mdy"], question.Choices.Select(c => c.Value));
        Assert.Equal("dmy", question.Default);
        Assert.Equal("03.08.2026", question.Examples[0]);

        ShopInspection answered = Inspect(Open, new(kind) { ["log.csv/dates"] = "mdy" });
        Assert.Equal("mdy", answered.Tables.Single().Map!.DateOrder);
        Assert.DoesNotContain(answered.Questions, q => q.Key == "log.csv/dates");
        Assert.DoesNotContain(Inspect(Log, kind).Questions, q => q.Key == "log.csv/dates");
    }

    [Theory]
    [InlineData("1.250", "2.400", true)]
    [InlineData("1.250", "2,40", false)]
    public void Amounts_ThatCanBeReadTwoWays_AreAskedAbout(string one, string other, bool asks)
    {
        string list = $"Part number;Description;Price\nAB-1001;door seal;{one}\nAB-1002;drain pump;{other}\nAB-1003;motor brush;{one}\n";
        ShopInspection found = Inspect(list, new() { ["log.csv/kind"] = "parts", ["log.csv/field/price"] = "Price" });
        Assert.Equal(asks, found.Questions.Any(q => q.Key == "log.csv/numbers"));
    }

    [Fact]
    public void Tables_WhatTheProgramWrites_IsNoTableOfTheShop()
    {
        using var folder = new Scratch();
        foreach (string name in (string[])["log.csv", "review-components.csv", "data-faults.csv", "rejects-log.csv", "complaint-words.csv", "notes.md"])
        {
            File.WriteAllText(folder.Sub(name), Log);
        }

        Assert.Equal(["log.csv"], ShopTables.In(folder.Path, new ReadingLimits()).Select(f => f.Name));
    }

    private static ShopInspection Inspect(string text, Dictionary<string, string> answers)
    {
        using var folder = new Scratch();
        File.WriteAllText(folder.Sub("log.csv"), text);
        return new Inspector(new ReadingLimits(), WordSets.Load(null), answers).Inspect(ShopTables.In(folder.Path, new ReadingLimits()), CancellationToken.None);
    }

    private sealed class Scratch : IDisposable
    {
        public string Path { get; } = Directory.CreateTempSubdirectory("questions-").FullName;

        public string Sub(string name) => System.IO.Path.Combine(Path, name);

        public void Dispose() => Directory.Delete(Path, recursive: true);
    }
}
