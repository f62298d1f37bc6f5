using System.Reflection;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Rejects;
using PartsSignal.Pipeline.Staging;
using PartsSignal.Pipeline.Tests.Reading;
using PartsSignal.Pipeline.Tests.Staging;
using PartsSignal.Pipeline.Tests.Transform;
using static PartsSignal.Pipeline.Tests.Reading.WorkbookMaker;

namespace PartsSignal.Pipeline.Tests.Core;

/// <summary>The documented codes are all there are, and each has rows (or a file) that produce it.</summary>
public sealed class ReasonCodeTests
{
    private const string Header = "Part,Text,Price,Days\n";
    private const string Good = "A1,Pump,1.5,7\n";

    private static readonly SourceMap Parts = new()
    {
        Files = "parts.csv",
        Kind = "parts",
        Columns = new Dictionary<string, IReadOnlyList<string>> { ["part"] = ["Part"], ["description"] = ["Text"], ["price"] = ["Price"], ["returnable_days"] = ["Days"] },
    };

    private static readonly SourceMap Counts = new()
    {
        Files = "parts.csv",
        Kind = "van_counts",
        Columns = new Dictionary<string, IReadOnlyList<string>> { ["van"] = ["Van"], ["part"] = ["Part"], ["on_hand"] = ["On hand"], ["counted_on"] = ["Day"] },
    };

    private static readonly Dictionary<string, (SourceMap Map, string Text)> Rows = new(StringComparer.Ordinal)
    {
        [ReasonCode.OpenQuote] = (Parts, Header + Good + "A2,\"Belt,1.5,7\n" + Good),
        [ReasonCode.BadQuoting] = (Parts, Header + Good + "A2,\"Belt\" wide, long,1.5,7\n" + Good),
        [ReasonCode.TooFewCells] = (Parts, Header + Good + "A2,Belt\n" + Good),
        [ReasonCode.TooManyCells] = (Parts, Header + Good + "A2,Belt,1.5,7,x,y\n" + Good),
        [ReasonCode.RowTooLong] = (Parts, Header + Good + $"A2,{new string('x', 5_000)},1.5,7\n" + Good),
        [ReasonCode.Missing] = (Parts, Header + Good + ",Belt,1.5,7\n" + Good),
        [ReasonCode.BadNumber] = (Parts, Header + Good + "A2,Belt,cheap,7\n" + Good),
        [ReasonCode.DamagedBySpreadsheet] = (Parts, Header + Good + "1.00E+10,Belt,1.5,7\n" + Good),
        [ReasonCode.TextTooLong] = (Parts, Header + Good + $"A2,{new string('x', 20_001)},1.5,7\n" + Good),
        [ReasonCode.SummaryRow] = (Parts, Header + Good + "Total,,3.0,\n" + Good),
        [ReasonCode.BadDate] = (Counts, "Van,Part,On hand,Day\n1,A1,2,2026-08-03\n1,A2,2,2026-13-32\n1,A3,2,2026-08-03\n"),
        [ReasonCode.OutOfRange] = (Counts, "Van,Part,On hand,Day\n1,A1,2,2026-08-03\n1,A2,-2,2026-08-03\n1,A3,2,2026-08-03\n"),
    };

    public static TheoryData<string> RowCodes => [.. Rows.Keys];

    [Fact]
    public void Meanings_EveryCode_IsDocumentedOnceAndProducedByATest()
    {
        string[] codes = [.. typeof(ReasonCode).GetFields(BindingFlags.Public | BindingFlags.Static).Where(f => f.IsLiteral).Select(f => (string)f.GetRawConstantValue()!).Order(StringComparer.Ordinal)];
        Assert.Equal(codes, ReasonCode.Meanings.Select(m => m.Code).Order(StringComparer.Ordinal));
        Assert.All(codes, c => Assert.Contains(c, RejectsReadme.Text(), StringComparison.Ordinal));
        string[] elsewhere = [ReasonCode.BadEncoding, ReasonCode.FormulaError, ReasonCode.NotData, ReasonCode.UnknownWord, ReasonCode.UnknownJob, ReasonCode.Personal, ReasonCode.WrongColumn, .. RefusedFileTests.Codes];
        Assert.Equal(codes, Rows.Keys.Concat(elsewhere).Order(StringComparer.Ordinal));
        Assert.Equal(ReasonCode.OfFiles.Order(StringComparer.Ordinal), RefusedFileTests.Codes.Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(RowCodes))]
    public async Task StageAsync_OneBadRowAmongGoodOnes_OneRejectWithItsCodeAndTheOthersLoad(string code)
    {
        using var rig = new StagingRig();
        (SourceMap map, string text) = Rows[code];
        rig.Write("parts.csv", text);
        var settings = new ShopSettings { Sources = [map], Limits = code == ReasonCode.RowTooLong ? new() { MaxRowBytes = 2_000 } : new() };
        StagedFile file = (await rig.StageAllAsync(settings)).Single();
        Assert.EndsWith(code, Assert.Single(StagingRig.Rejects(file)), StringComparison.Ordinal);
        Assert.StartsWith("3|", StagingRig.Rejects(file)[0], StringComparison.Ordinal);
        Assert.Equal((3, 1), (file.RowsRead, file.Rejected));
        string[] lines = await File.ReadAllLinesAsync(file.RawRejects!, TestContext.Current.CancellationToken);
        Assert.Contains($",{code},", string.Join('\n', lines[1..]), StringComparison.Ordinal);
    }

    [Fact]
    public async Task StageAsync_ByteThatIsNoTextInUtf8_BadEncoding()
    {
        using var rig = new StagingRig();
        byte[] rows = [.. System.Text.Encoding.UTF8.GetBytes(Header + string.Concat(Enumerable.Repeat("A1,Dichtung für Tür,1.5,7\n", 200)) + "A2,T"), 0xfc, .. "r,1.5,7\n"u8];
        rig.Write("parts.csv", rows);
        StagedFile file = (await rig.StageAllAsync(new ShopSettings { Sources = [Parts] })).Single();
        Assert.Equal(["202|-|bad_encoding"], StagingRig.Rejects(file));
    }

    [Fact]
    public async Task StageAsync_CellWithAFailedFormula_FormulaError()
    {
        using var rig = new StagingRig();
        rig.Write("parts.xlsx", Make([[Text("Part"), Text("Text"), Text("Price"), Text("Days")], [Text("A1"), Text("Pump"), Error("#REF!"), Number("7")]]));
        StagedFile file = (await rig.StageAllAsync(new ShopSettings { Sources = [Parts with { Files = "parts.xlsx" }] })).Single();
        Assert.Equal(["2|price|formula_error"], StagingRig.Rejects(file));
    }

    [Fact]
    public async Task StageAsync_WordThatNoTableKnows_RowLoadedWithoutIt()
    {
        using var rig = new StagingRig();
        StagedFile file = await rig.StageAsync("parts.csv", "Part,Text,Price,Days\nA1,Pump,1.5,enormous-ish\n", Parts with { Columns = new Dictionary<string, IReadOnlyList<string>> { ["part"] = ["Part"], ["size_class"] = ["Days"] } });
        Assert.Equal([new UnreadCells("size_class", ReasonCode.UnknownWord, 1, 2)], file.UnreadCells);
        Assert.Equal(0, file.Rejected);
    }

    [Fact]
    public async Task Load_PartLineOfAJobInNoLog_UnknownJob()
    {
        using var shop = new SmallShop();
        shop.Write("jobs.csv", "Job,Opened,Fault\n1,2026-08-03,no heat\n").Write("lines.csv", "Job,Part\n1,A1\n2,A1\n").Write("shop.json", """
            { "sources": [
              { "files": "jobs.csv", "kind": "jobs", "columns": { "job_id": "Job", "opened_on": "Opened", "complaint": "Fault" } },
              { "files": "lines.csv", "kind": "job_parts", "columns": { "job_id": "Job", "part": "Part" } } ] }
            """);
        await shop.Load();
        Assert.Equal(["lines.csv|3|job_id|unknown_job"], shop.Rows("from rejects select source_file, source_line, field, reason_code"));
    }
}
