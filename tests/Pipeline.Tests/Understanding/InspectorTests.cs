using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Understanding;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Understanding;

public sealed class InspectorTests
{
    private static readonly Inspector Inspector = new(new ReadingLimits(), WordSets.Load(null));

    private static readonly Lazy<ShopInspection> Sample = new(() => Inspector.Inspect(ShopTables.In(RepositoryFolder.SampleShop, new ReadingLimits()), CancellationToken.None));

    public static TheoryData<string> SampleFiles => [.. ShopFile.Load(RepositoryFolder.SampleShop).Sources.Select(s => s.Files)];

    // What the shop's own map says is found, or it is asked.
    [Theory]
    [MemberData(nameof(SampleFiles))]
    public void Inspect_SampleFile_FindsOrAsksWhatTheShopMaps(string name)
    {
        SourceMap wanted = ShopFile.Load(RepositoryFolder.SampleShop).Sources.Single(s => s.Files == name);
        SourceMap found = Sample.Value.Tables.Single(t => t.File == name).Map!;
        HashSet<string?> asked = [.. Sample.Value.Questions.Where(q => q.File == name).Select(q => q.Field)];
        Assert.Equal(wanted.Kind, found.Kind);
        Assert.Equal(Columns(wanted, asked), Columns(found, asked));
        Assert.Equal(wanted.PartGroups.Select(g => Line(g, asked)), found.PartGroups.Select(g => Line(g, asked)));
    }

    [Fact]
    public void Inspect_Sample_FewQuestions() => Assert.InRange(Sample.Value.Questions.Count, 0, 6);

    [Fact]
    public void Inspect_DaysUpToTwelve_NoOrderProposed()
    {
        Inspection found = Inspect("Job,Opened,Complaint\n1,03/08/2026,no heat at all\n2,04/08/2026,leaks from door\n");
        Assert.Null(found.Map!.DateOrder);
    }

    [Fact]
    public void Inspect_ADayOverTwelve_OrderProposed()
    {
        Inspection found = Inspect("Job,Opened,Complaint\n1,03/08/2026,no heat at all\n2,08/26/2026,leaks from door\n");
        Assert.Equal("mdy", found.Map!.DateOrder);
        Assert.Empty(found.Doubts);
    }

    // Headers name the days the wrong way round; no job is finished before it is called in.
    [Theory]
    [InlineData(2, "Opened", "Closed")]
    [InlineData(-2, "Closed", "Opened")]
    [InlineData(0, "Opened", "Closed")]
    public void Inspect_TwoDays_TheEarlierIsTheCall(int days, string opened, string closed)
    {
        var first = new DateOnly(2026, 3, 2);
        string rows = string.Concat(Enumerable.Range(0, 40).Select(i => $"J{i},{first.AddDays(i):yyyy-MM-dd},{first.AddDays(i + (i % 3 == 0 ? 0 : days)):yyyy-MM-dd},WX41{i % 9}0,no heat at all,repaired\n"));
        Inspection found = Inspect("Job,Opened,Closed,Model,Complaint,Outcome\n" + rows);
        Assert.Equal([opened], found.Map!.Columns["opened_on"]);
        Assert.Equal([closed], found.Map.Columns["closed_on"]);
    }

    [Fact]
    public void Inspect_ModelNumbersInTheNotes_Doubt()
    {
        Inspection found = Inspect("Job,Opened,Complaint\n1,2026-08-03,WX4150-B no heat at all\n2,2026-08-13,DE2470 leaks from door\n");
        Assert.Contains(found.Doubts, d => d.StartsWith("Model numbers:", StringComparison.Ordinal));
    }

    [Fact]
    public void Inspect_PartNumbersThatASpreadsheetDamaged_Doubt()
    {
        Inspection found = Inspect("Part number,Description,Price\n1.00E+10,Pump,3.50\n40-118,Belt,4.50\n");
        Assert.Equal("parts", found.Map!.Kind);
        Assert.Contains(found.Doubts, d => d.StartsWith("Part numbers: 1 ", StringComparison.Ordinal));
    }

    [Fact]
    public void Inspect_MixedDecimals_Doubt()
    {
        Inspection found = Inspect("Part number;Description;Price\n1;Pump;3.50\n40-118;Belt;4,50\n");
        Assert.Contains(found.Doubts, d => d.StartsWith("Amounts:", StringComparison.Ordinal));
    }

    [Fact]
    public void Inspect_ColumnOfEmailsNobodyMapped_NamedAsPersonal()
    {
        Inspection found = Inspect("Job,Opened,Complaint,Extra\n1,2026-08-13,no heat at all,a@example.com\n2,2026-08-14,leaks from door,b@example.com\n");
        Assert.Contains("Complaint", found.Map!.Columns["complaint"]);
        Assert.Contains(found.Notes, n => n.StartsWith("Personal data in Extra", StringComparison.Ordinal));
    }

    [Fact]
    public void Inspect_NothingKnown_NoMapAndSaysWhatIsNeeded()
    {
        Inspection found = Inspect("aa,bb\nq,w\ne,r\n");
        Assert.Null(found.Map);
        Assert.NotEmpty(found.Doubts.Concat(found.Notes));
    }

    private static Inspection Inspect(string text)
    {
        string path = Path.GetTempFileName();
        try
        {
            File.WriteAllText(path, text);
            return Inspector.Inspect(new InputFile("log.csv", path, null), CancellationToken.None);
        }
        finally
        {
            File.Delete(path);
        }
    }

    private static string Columns(SourceMap map, HashSet<string?> but) => string.Join('\n', map.Columns.Where(c => !but.Contains(c.Key)).OrderBy(c => c.Key, StringComparer.Ordinal).Select(c => $"{c.Key}={string.Join('+', c.Value)}"));

    private static string Line(IReadOnlyDictionary<string, string> group, HashSet<string?> but) => string.Join(',', group.Where(g => !but.Contains(g.Key)).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => $"{g.Key}={g.Value}"));
}
