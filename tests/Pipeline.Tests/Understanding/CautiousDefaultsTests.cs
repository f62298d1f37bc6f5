using System.Globalization;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Understanding;

namespace PartsSignal.Pipeline.Tests.Understanding;

/// <summary>What a column in doubt is read as until somebody answers. Headers say nothing here: only cells and other tables do.</summary>
public sealed class CautiousDefaultsTests : IDisposable
{
    private const double Doubtful = 0.5;
    private const double Sure = 0.99;
    private static readonly string[] Parts = ["834.5391", "281.9172", "946.2708", "368.1169", "402.7558", "695.8718"];
    private static readonly string[] PhoneLike = ["227-2443", "780-1830", "191-6654", "275-7568", "555-0142", "555-0199"];
    private static readonly string[] Names = ["drain pump", "inlet valve", "door seal", "drive belt", "heating element", "motor"];
    private static readonly string[] Notes = ["gate code 12", "paid cash", "ring twice", ""];
    private readonly string _folder = Directory.CreateTempSubdirectory("cautious-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void PhoneNumbers_InALogWithPartLines_AreNotReadAsParts()
    {
        string log = Write("log", i => $"{i},555-{100 + (i % 40):0000}");
        string lines = Write("lines", i => $"{i},{Parts[i % 6]}");
        Assert.False(IsRead("part", 1, (log, "jobs", [("job_id", 0, Sure), ("part", 1, Doubtful)]), (lines, "job_parts", [("job_id", 0, Sure), ("part", 1, Sure)])));
    }

    [Theory]
    [InlineData("834.5391", true)]
    [InlineData("8345391", true)]
    [InlineData("834-5391", true)]
    [InlineData("Q-771", false)]
    public void PartNumbers_InALogWithAPriceList_AreReadWhereTheListHoldsThem(string typed, bool read)
    {
        string log = Write("log", i => $"{i},{(i % 3 == 0 ? typed : $"Z{i % 3}-{i % 3}90")}");
        string list = Write("list", i => $"{(i < 7 ? Parts[i - 1] : $"99.{i:0000}")},12.50");
        Assert.Equal(read, IsRead("part", 1, (log, "jobs", [("job_id", 0, Sure), ("part", 1, Doubtful)]), (list, "parts", [("part", 0, Sure), ("price", 1, Sure)])));
    }

    [Fact]
    public void PartNumbersLikePhoneNumbers_InALogAlone_AreRead()
    {
        string log = Write("log", i => $"{i},{PhoneLike[i * 5 % 6]},SN{i % 50}");
        Assert.True(IsRead("part", 1, (log, "jobs", [("job_id", 0, Sure), ("part", 1, Doubtful), ("serial", 2, Sure)])));
    }

    [Theory]
    [InlineData("555-0", "of the household")]
    [InlineData("call back soon", "words")]
    [InlineData("3", "counts")]
    public void OtherCells_InALogAlone_AreNotReadAsParts(string cell, string what)
    {
        string log = Write("log", i => $"{i},{(what == "of the household" ? $"{cell}{100 + (i % 50)}" : what == "counts" ? $"{1 + (i % 4)}" : cell)},SN{i % 50}");
        Assert.False(IsRead("part", 1, (log, "jobs", [("job_id", 0, Sure), ("part", 1, Doubtful), ("serial", 2, Sure)])));
    }

    [Fact]
    public void Notes_InALogWithAPriceList_AreNotReadAsNamesOfParts()
    {
        string log = Write("log", i => $"{i},{Notes[i % 4]}");
        string list = Write("list", i => $"99.{i:0000},{Names[i % 6]}");
        Assert.False(IsRead("description", 1, (log, "jobs", [("job_id", 0, Sure), ("description", 1, Doubtful)]), (list, "parts", [("part", 0, Sure), ("description", 1, Sure)])));
    }

    [Fact]
    public void NamesOfParts_InALogWithAPriceList_AreRead()
    {
        string log = Write("log", i => $"{i},{Names[i % 6]}");
        string list = Write("list", i => $"99.{i:0000},{Names[i % 6].ToUpperInvariant()}");
        Assert.True(IsRead("description", 1, (log, "jobs", [("job_id", 0, Sure), ("description", 1, Doubtful)]), (list, "parts", [("part", 0, Sure), ("description", 1, Sure)])));
    }

    [Fact]
    public void Notes_OnPartLines_DoNotGoWithThePartNumber()
    {
        string lines = Write("lines", i => $"{i},{Parts[i % 6]},{Notes[i * 7 % 13 % 4]}");
        Assert.False(IsRead("description", 2, (lines, "job_parts", [("job_id", 0, Sure), ("part", 1, Sure), ("description", 2, Doubtful)])));
    }

    [Fact]
    public void SureColumn_OfNumbersThatNoListHas_IsRead()
    {
        string log = Write("log", i => $"{i},QX-{i % 9}");
        string list = Write("list", i => $"99.{i:0000},12.50");
        Assert.True(IsRead("part", 1, (log, "jobs", [("job_id", 0, Sure), ("part", 1, Sure)]), (list, "parts", [("part", 0, Sure), ("price", 1, Sure)])));
    }

    private string Write(string name, Func<int, string> row)
    {
        string path = Path.Combine(_folder, name + ".csv");
        string[] rows = [.. Enumerable.Range(1, 120).Select(row)];
        File.WriteAllText(path, string.Join(',', rows[0].Split(',').Select((_, c) => "xq" + (char)('a' + c))) + "\n" + string.Join('\n', rows) + "\n");
        return name + ".csv";
    }

    // Whether the column still gives the field, which it must be asked about if not.
    private bool IsRead(string field, int column, params (string File, string Kind, (string Field, int Column, double Chance)[] Columns)[] tables)
    {
        var limits = new ReadingLimits();
        ILookup<string, InputFile> files = ShopTables.In(_folder, limits).ToLookup(f => f.Name);
        SampledTable[] sampled = [.. tables.Select(t => TableSampler.Read(files[t.File].Single(), limits, TestContext.Current.CancellationToken).Single())];
        var evidence = ShopEvidence.Of([.. sampled.Select(t => t.Sample)], HeaderLexicon.Shipped);
        TableReading[] readings = [.. tables.Select((t, i) => Reading(sampled[i], t.Kind, t.Columns, evidence.Tables[i]))];
        TableReading found = CautiousDefaults.Of(0, readings, evidence, odds => FieldChoice.Of(tables[0].Kind, odds));
        ColumnDoubt? doubt = found.Doubts.SingleOrDefault(d => d.Field == field);
        bool read = found.Choice!.ColumnOf(field) == column;
        Assert.True(read || (doubt is { Chosen: < 0 } && doubt.Columns.Contains(column)), string.Create(CultureInfo.InvariantCulture, $"column {column} is neither read nor asked about"));
        return read;
    }

    private static TableReading Reading(SampledTable table, string kind, (string Field, int Column, double Chance)[] columns, TableEvidence evidence)
    {
        IReadOnlyList<string> fields = KindFields.Of(kind);
        var odds = new double[table.Sample.Columns.Count, fields.Count];
        for (int c = 0; c < odds.GetLength(0); c++)
        {
            for (int f = 0; f < odds.GetLength(1); f++)
            {
                odds[c, f] = FieldChoice.LogOdds(columns.FirstOrDefault(x => x.Column == c && x.Field == fields[f]) is { Chance: > 0 } x ? x.Chance : 0.001);
            }
        }

        var choice = FieldChoice.Of(kind, odds);
        return new TableReading(table, table.Sample.File, kind, [(kind, 1)], choice, [.. ColumnDoubt.Of(choice, evidence)]);
    }
}
