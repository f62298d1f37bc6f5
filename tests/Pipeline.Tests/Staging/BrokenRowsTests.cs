using System.Globalization;
using System.Text;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Staging;

namespace PartsSignal.Pipeline.Tests.Staging;

/// <summary>Files that were damaged, seen from the damage: every row loads as it was or stands in the rejects, and the counts add up.</summary>
public sealed class BrokenRowsTests
{
    private const string Header = "Job,Opened,Brand,Model,Said,Part,Price,Man,Warranty";
    private const string StagedColumns = "job_id, opened_on, brand, model_raw, complaint_text, technician, warranty";
    private static readonly string[] Brands = ["Haldorvane", "Brixomere", "Quellmark"];
    private static readonly string[] Complaints = ["does not heat", "will not drain", "door does not close", "makes a loud noise", "stops half way"];
    private static readonly string[] Men = ["Ada", "Bo", "Cleo", "Dov"];

    private static readonly SourceMap Jobs = new()
    {
        Files = "jobs.csv",
        Kind = "jobs",
        Columns = new[] { ("job_id", "Job"), ("opened_on", "Opened"), ("brand", "Brand"), ("model", "Model"), ("complaint", "Said"), ("part", "Part"), ("price", "Price"), ("technician", "Man"), ("warranty", "Warranty") }
            .ToDictionary(c => c.Item1, c => (IReadOnlyList<string>)[c.Item2]),
    };

    private static readonly SourceMap Parts = new()
    {
        Files = "parts.csv",
        Kind = "parts",
        Columns = new Dictionary<string, IReadOnlyList<string>> { ["part"] = ["Part"], ["description"] = ["Text"], ["price"] = ["Price"], ["returnable_days"] = ["Days"] },
    };

    // Two rows in three leave the last column blank.
    private static string[] Cells(int i) =>
    [
        string.Create(CultureInfo.InvariantCulture, $"J{i}"), string.Create(CultureInfo.InvariantCulture, $"2026-0{(i % 9) + 1}-{(i % 28) + 1:00}"),
        Brands[i % 3], string.Create(CultureInfo.InvariantCulture, $"WX-{100 + (i % 40)}"), string.Create(CultureInfo.InvariantCulture, $"{Complaints[i % 5]} {(i % 2 == 0 ? "at all" : "since May")}"),
        string.Create(CultureInfo.InvariantCulture, $"P{1000 + (i % 60)}"), string.Create(CultureInfo.InvariantCulture, $"{10 + (i % 50)}.{i % 90 + 10}"), Men[i % 4], i % 3 == 0 ? "yes" : "",
    ];

    [Fact]
    public async Task StageAsync_EveryCountOfMissingCellsAtEveryPlace_LoadedAsTheyWereOrRefused()
    {
        var broken = new List<(int Row, string[] Cells)>();
        foreach (int missing in Enumerable.Range(1, 8))
        {
            foreach (int place in Enumerable.Range(0, 10 - missing))
            {
                int row = 20 + (broken.Count * 15);
                broken.Add((row, [.. Cells(row)[..place], .. Cells(row)[(place + missing)..]]));
            }
        }

        StagedFile file = await AssertSound(broken);
        Assert.InRange(file.Rejected, broken.Count - 8, broken.Count);
    }

    [Fact]
    public async Task StageAsync_EveryCountOfExtraCellsAtEveryPlace_Refused()
    {
        var broken = new List<(int Row, string[] Cells)>();
        foreach (string extra in new[] { "", "x", "12.50", "2026-08-03" })
        {
            foreach (int count in Enumerable.Range(1, 3))
            {
                foreach (int place in Enumerable.Range(0, 10))
                {
                    int row = 20 + (broken.Count * 10);
                    broken.Add((row, [.. Cells(row)[..place], .. Enumerable.Repeat(extra, count), .. Cells(row)[place..]]));
                }
            }
        }

        StagedFile file = await AssertSound(broken);
        Assert.Equal(broken.Count, file.Rejected);
    }

    [Fact]
    public async Task StageAsync_OneCellLostAndOneTooManyElsewhere_LoadedAsTheyWereOrRefused()
    {
        var broken = new List<(int Row, string[] Cells)>();
        foreach (int lost in Enumerable.Range(0, 8))
        {
            foreach (int extra in Enumerable.Range(0, 8).Where(e => Math.Abs(e - lost) > 1))
            {
                int row = 20 + (broken.Count * 20);
                List<string> cells = [.. Cells(row)];
                cells.RemoveAt(lost);
                cells.Insert(extra, "");
                broken.Add((row, [.. cells]));
            }
        }

        // A cell that moved by one among words of one kind can't be told; a price or a day out of place can.
        using var rig = new StagingRig();
        StagedFile file = await rig.StageAsync("jobs.csv", Text(1_300, broken), Jobs);
        IReadOnlyList<string> loaded = StagingRig.Rows(file, "staged_jobs", "complaint_text");
        Assert.Equal(file.RowsRead, loaded.Count + file.Rejected);
        Assert.DoesNotContain(loaded, c => c != "-" && char.IsDigit(c[0]));
        Assert.Contains(StagingRig.Rejects(file), r => r.EndsWith(ReasonCode.WrongColumn, StringComparison.Ordinal));
    }

    [Fact]
    public async Task StageAsync_FileCutAtEveryByteNearItsEnd_LoadedAsItWasOrRefused()
    {
        const int Rows = 60;
        string whole = Text(Rows, []);
        int cuts = string.Join(',', Cells(Rows - 1)).Length + 2;
        using var rig = new StagingRig();
        for (int cut = 0; cut < cuts; cut++)
        {
            rig.Write(string.Create(CultureInfo.InvariantCulture, $"{cut:00}.csv"), whole[..^cut]);
        }

        SourceMap[] maps = [.. Enumerable.Range(0, cuts).Select(c => Jobs with { Files = string.Create(CultureInfo.InvariantCulture, $"{c:00}.csv") })];
        foreach (StagedFile file in await rig.StageAllAsync(new ShopSettings { Sources = maps }))
        {
            IReadOnlyList<string> loaded = AssertAsWritten(file, but: 1);
            Assert.InRange(loaded.Count + file.Rejected, Rows - 1, Rows);
            Assert.Equal(file.RowsRead, loaded.Count + file.Rejected);
            Assert.Equal(0, file.NotData);
        }
    }

    [Theory]
    [InlineData("Total")]
    [InlineData("Total failure")]
    [InlineData("total")]
    [InlineData("Sum")]
    [InlineData("Summe")]
    [InlineData("end of list")]
    public async Task StageAsync_WordsOfFootersInEveryColumn_NoRowBecomesAFooter(string word)
    {
        using var rig = new StagingRig();
        for (int column = 0; column < 9; column++)
        {
            var rows = new[] { 30, 59 }.Select(r => (r, (string[])[.. Cells(r)[..column], word, .. Cells(r)[(column + 1)..]])).ToList();
            rig.Write(string.Create(CultureInfo.InvariantCulture, $"{column}.csv"), Text(60, rows));
        }

        SourceMap[] maps = [.. Enumerable.Range(0, 9).Select(c => Jobs with { Files = string.Create(CultureInfo.InvariantCulture, $"{c}.csv") })];
        foreach (StagedFile file in await rig.StageAllAsync(new ShopSettings { Sources = maps }))
        {
            Assert.Equal((60, 0), (file.RowsRead, file.NotData));
            Assert.Equal(file.RowsRead, StagingRig.Rows(file, "staged_jobs", "job_id").Count + file.Rejected);
        }
    }

    [Fact]
    public async Task StageAsync_CompleteRowsWithoutSeparatorsAtTheEnd_Loaded()
    {
        using var rig = new StagingRig();
        var rows = Enumerable.Range(50, 10).Where(r => r % 3 != 0).Select(r => (r, Cells(r)[..8])).ToList();
        StagedFile file = await rig.StageAsync("jobs.csv", Text(60, rows), Jobs);
        Assert.Equal((60, 0, 0), (file.RowsRead, file.Rejected, file.NotData));
        Assert.Equal(60, AssertAsWritten(file).Count);
    }

    [Fact]
    public async Task StageAsync_EmptyCellTooManyInEveryRow_Loaded()
    {
        using var rig = new StagingRig();
        StagedFile file = await rig.StageAsync("jobs.csv", Text(60, []).Replace("\n", ",\n", StringComparison.Ordinal).Replace(Header + ",", Header, StringComparison.Ordinal), Jobs);
        Assert.Equal((60, 0), (file.RowsRead, file.Rejected));
        Assert.Equal(60, AssertAsWritten(file).Count);
    }

    [Fact]
    public async Task StageAsync_LinesThatAreNotData_CountedApartAndTheirTextKept()
    {
        using var rig = new StagingRig();
        StagedFile file = await rig.StageAsync(
            "parts.csv",
            "Price list of spring\n\nPart,Text,Price,Days\nA1,Pump,1.5,7\nA2,Belt,2.5,7\nPart,Text,Price,Days\nA3,Total seal set,3.5,7\nTotal,,7.5,\nPrices may change\n",
            Parts);
        Assert.Equal(["A1", "A2", "A3"], StagingRig.Rows(file, "staged_parts", "part_raw"));
        Assert.Equal((3, 0), (file.RowsRead, file.Rejected));
        Assert.Equal((1, 1, 2), (file.Titles, file.RepeatedHeaders, file.Footers));
        Assert.Null(file.Rejects);
        string[] kept = [.. (await File.ReadAllLinesAsync(file.RawRejects!, TestContext.Current.CancellationToken)).Skip(1)];
        Assert.Equal(4, kept.Length);
        Assert.All(kept, line => Assert.Contains($",{ReasonCode.NotData},", line, StringComparison.Ordinal));
        Assert.EndsWith(",Price list of spring", kept[0], StringComparison.Ordinal);
    }

    [Fact]
    public async Task StageAsync_MoreThanFiveNotesAtTheEnd_FiveAreNotDataTheOthersRefused()
    {
        using var rig = new StagingRig();
        string notes = string.Concat(Enumerable.Range(1, 8).Select(n => string.Create(CultureInfo.InvariantCulture, $"Note {n} of the office\n")));
        StagedFile file = await rig.StageAsync("parts.csv", "Part,Text,Price,Days\nA1,Pump,1.5,7\nA2,Belt,2.5,7\n" + notes, Parts);
        Assert.Equal((5, 3, 5), (file.RowsRead, file.Rejected, file.Footers));
        Assert.Equal(["4|-|too_few_cells", "5|-|too_few_cells", "6|-|too_few_cells"], StagingRig.Rejects(file));
    }

    [Fact]
    public async Task StageAsync_AmountUnderComplaintWithNothingElseOutOfPlace_LoadedAsTyped()
    {
        using var rig = new StagingRig();
        string[] odd = Cells(30);
        odd[4] = "0.75";
        StagedFile file = await rig.StageAsync("jobs.csv", Text(60, [(30, odd)]), Jobs);
        Assert.Equal((60, 0), (file.RowsRead, file.Rejected));
    }

    [Fact]
    public async Task StageAsync_PriceUnderComplaint_RefusedAndLoadedOnceMended()
    {
        using var rig = new StagingRig();
        string[] moved = Cells(30);
        (moved[4], moved[6]) = (moved[6], "");
        StagedFile file = await rig.StageAsync("jobs.csv", Text(200, [(30, moved)]), Jobs);
        Assert.Equal(["32|complaint|wrong_column"], StagingRig.Rejects(file));
        Directory.CreateDirectory(Path.Combine(rig.Input, "mended"));
        File.Copy(file.RawRejects!, Path.Combine(rig.Input, "mended", Path.GetFileName(file.RawRejects!)));
        IReadOnlyList<StagedFile> both = await rig.StageAllAsync(new ShopSettings { Sources = [Jobs] });
        Assert.Equal(["J30"], StagingRig.Rows(both[1], "staged_jobs", "job_id"));
    }

    private static string Text(int rows, IReadOnlyCollection<(int Row, string[] Cells)> instead)
    {
        var other = instead.ToDictionary(i => i.Row, i => i.Cells);
        var text = new StringBuilder(Header).Append('\n');
        for (int i = 0; i < rows; i++)
        {
            text.AppendJoin(',', other.GetValueOrDefault(i) ?? Cells(i)).Append('\n');
        }

        return text.ToString();
    }

    private static async Task<StagedFile> AssertSound(List<(int Row, string[] Cells)> broken)
    {
        using var rig = new StagingRig();
        int rows = broken[^1].Row + 20;
        StagedFile file = await rig.StageAsync("jobs.csv", Text(rows, broken), Jobs);
        IReadOnlyList<string> loaded = AssertAsWritten(file);
        // A row of which a blank cell is left is a blank line.
        Assert.Equal(rows - broken.Count(b => b.Cells.All(string.IsNullOrWhiteSpace)), file.RowsRead + file.NotData);
        Assert.Equal(file.RowsRead, loaded.Count + file.Rejected);
        return file;
    }

    // Every loaded row is one that was written, or that row with cells at its end blank; of the last row one cell may have
    // been cut short.
    private static IReadOnlyList<string> AssertAsWritten(StagedFile file, int but = 0)
    {
        IReadOnlyList<string> loaded = StagingRig.Rows(file, "staged_jobs", StagedColumns);
        foreach (string row in loaded)
        {
            string[] cells = row.Split('|');
            string[] written = Cells(int.Parse(cells[0][1..], CultureInfo.InvariantCulture));
            string?[] whole = [written[0], written[1], written[2], written[3], written[4], written[7], written[8].Length > 0 ? "True" : "-"];
            int same = cells.Zip(whole).TakeWhile(c => string.Equals(c.First, c.Second, StringComparison.OrdinalIgnoreCase)).Count();
            Assert.True(cells[same..].All(c => c == "-") || cells.Length - same <= but, $"{row} was {string.Join('|', whole)}");
        }

        return loaded;
    }
}
