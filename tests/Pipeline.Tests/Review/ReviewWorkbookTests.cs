using System.IO.Compression;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Review;
using PartsSignal.Reports.Components;
using PartsSignal.Reports.Workbook;

namespace PartsSignal.Pipeline.Tests.Review;

public sealed class ReviewWorkbookTests : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("partssignal-workbook-").FullName;

    public ReviewWorkbookTests()
    {
        Directory.CreateDirectory(Review);
        Directory.CreateDirectory(Input);
        List(ReviewNames.PartNumbers, ["supplier", "number", "typed_key", "times", "suggestion_1", "suggestion_2", "suggestion_3"],
            ["Brix", "0052I05", "52I05", "9", "0052105", "0052106", null], ["", "3-I2", "3I2", "4", "3-12", null, null], ["", "ZZ9", "ZZ9", "1", null, null, null]);
        List(ReviewNames.Components, ["description", "times", "counted_as", "suggestion_1", "suggestion_2", "suggestion_3"],
            ["circ thing", "5", "", "circulation_pump", null, null], ["odd bit", "2", "odd_bit", null, null, null]);
        List(ReviewNames.Complaints, ["words", "times", "counted_as", "appliance_type", "example"], ["it sulks", "3", "", "washer", "J1"], ["it grumbles", "3", "", "washer", "J2"]);
        List(ReviewNames.Serials, ["job_id", "opened_on", "brand", "model", "candidates"], ["J1", "2024-03-04", "Orvane", "WE100", "2006-04 (50 %), 2016-04 (50 %)"]);
    }

    private string Review => Path.Combine(_root, "review");

    private string Input => Path.Combine(_root, "shop");

    private IReadOnlyList<QuestionList> Lists => QuestionList.All(Review, Input);

    public void Dispose() => Directory.Delete(_root, recursive: true);

    [Fact]
    public void Read_WorkbookAsWritten_HoldsNoAnswersAndNoFaults()
    {
        WorkbookAnswers answers = ReviewWorkbook.Read(Written(), "mine.xlsx", Lists);
        Assert.Equal((0, 0), (answers.Count, answers.Faults.Count));
        Assert.Equal(4, answers.Lists.Count);
    }

    [Fact]
    public void Write_EveryList_HasTextCellsAndADropDown()
    {
        using ZipArchive zip = ZipFile.OpenRead(Written());
        string book = Text(zip, "xl/workbook.xml"), complaints = Text(zip, "xl/worksheets/sheet2.xml"), numbers = Text(zip, "xl/worksheets/sheet3.xml");
        Assert.Contains("name=\"choices\" sheetId=\"6\" state=\"hidden\"", book, StringComparison.Ordinal);
        Assert.Contains("sqref=\"D2:D3\"><formula1>choices!$A$2:$A$", complaints, StringComparison.Ordinal);
        Assert.Contains("sqref=\"F2:F4\"><formula1>$D2:$E2</formula1>", numbers, StringComparison.Ordinal);
        Assert.Contains("numFmtId=\"49\"", Text(zip, "xl/styles.xml"), StringComparison.Ordinal);
        Assert.Contains("<t xml:space=\"preserve\">circulation pump</t>", Text(zip, "xl/worksheets/sheet4.xml"), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_LettersPlainWordsAndWhatASpreadsheetDid_AreTheAnswersMeant()
    {
        WorkbookAnswers answers = Filled(
            ("Part numbers", "0052I05", 52105d), ("Part numbers", "3-I2", new DateOnly(2026, 12, 3)), ("Part numbers", "ZZ9", 77001d),
            ("Part names", "circ thing", "a"), ("Part names", "odd bit", "Circulation  PUMP"),
            ("Complaints", "it sulks", "No fill"), ("Complaints", "it grumbles", "makes a grinding noise"),
            ("Build dates", "WE100", new DateOnly(2016, 4, 1)));
        Assert.Empty(answers.Faults);
        Assert.Empty(answers.Save(Review, Input));
        Assert.Equal(["0052105", "3-12", "77001"], Saved("Part numbers"));
        Assert.Equal(["circulation_pump", "circulation_pump"], Saved("Part names"));
        Assert.Equal(["no_fill", "noise"], Saved("Complaints"));
        Assert.Equal(["2016-04"], Saved("Build dates"));
    }

    [Fact]
    public void Read_SortedAndWithoutCodes_IsMatchedByWhatWasTyped()
    {
        string path = Path.Combine(_root, "sorted.xlsx");
        Write(path, [new WorkbookSheet("Complaints", ["Your answer", "Typed in your files"], [[Cell("noise"), Cell("it grumbles")], [Cell(null), Cell("it sulks")]])]);
        ReviewWorkbook.Read(path, "sorted.xlsx", Lists).Save(Review, Input);
        Assert.Equal(["", "noise"], Saved("Complaints"));
    }

    [Fact]
    public void Read_AnswersThatCannotBeUsed_AreSaidWithSheetAndRowAndTheOthersKept()
    {
        WorkbookAnswers answers = Filled(("Part numbers", "0052I05", "C"), ("Part numbers", "3-I2", new DateOnly(2026, 5, 6)), ("Complaints", "it sulks", "xyzzy"), ("Complaints", "it grumbles", "noise"));
        Assert.Equal(
            [
                "Part numbers, row 2: there is no suggestion C. Choose another letter, or type the answer.",
                "Part numbers, row 3: the spreadsheet changed the answer to 2026-05-06. Type it again with an apostrophe (') in front.",
            ],
            answers.Faults);
        Assert.Contains("Complaints: “xyzzy” is not on the list. Choose a name from the list, or type “ignore”.", answers.Save(Review, Input));
        Assert.Equal(["xyzzy", "noise"], Saved("Complaints"));
    }

    [Fact]
    public void Read_AnyOtherWorkbook_IsRefusedInWords()
    {
        string path = Path.Combine(_root, "jobs.xlsx");
        Write(path, [new WorkbookSheet("Complaints", ["Job", "Says"], [[Cell("1"), Cell("it sulks")]])]);
        Assert.Contains("is not the question workbook", Assert.Throws<BadInputException>(() => ReviewWorkbook.Read(path, "jobs.xlsx", Lists)).Message, StringComparison.Ordinal);
        File.WriteAllText(path, "not a workbook");
        Assert.ThrowsAny<BadInputException>(() => ReviewWorkbook.Read(path, "jobs.xlsx", Lists));
        Assert.Empty(Directory.EnumerateFiles(Input));
    }

    // Answers as a spreadsheet saves them: numbers and days where it took the text for one.
    private WorkbookAnswers Filled(params (string List, string Text, object Answer)[] answers)
    {
        string path = Path.Combine(_root, "filled.xlsx");
        Write(path, [.. Lists.Select(l => new WorkbookSheet(l.Title, ["Typed in your files", "Your answer", "Code"], [.. l.Questions.Select(q => (IReadOnlyList<WorkbookCell>)
        [
            Cell(q.Text),
            answers.FirstOrDefault(a => a.List == l.Title && a.Text == q.Text).Answer is { } answer ? new WorkbookCell(answer, answer is DateOnly ? CellKind.Day : answer is double ? CellKind.Number : CellKind.Text) : Cell(null),
            Cell(q.Code),
        ])]))]);
        return ReviewWorkbook.Read(path, "filled.xlsx", Lists);
    }

    private IEnumerable<string> Saved(string title) => Lists.Single(l => l.Title == title).Questions.Select(q => q.Answer);

    private string Written()
    {
        string path = Path.Combine(_root, "written.xlsx");
        using FileStream file = File.Create(path);
        ReviewWorkbook.Write(file, Lists);
        return path;
    }

    private static void Write(string path, IReadOnlyList<WorkbookSheet> sheets)
    {
        using FileStream file = File.Create(path);
        WorkbookWriter.Write(file, sheets);
    }

    private void List(string name, string[] columns, params string?[][] rows) =>
        ReviewFile.Write(Path.Combine(Review, name), [.. columns, ReviewFile.NoteColumn, ReviewFile.AnswerColumn], rows.Select(r => (IReadOnlyList<string?>)[.. r, null, null]));

    private static WorkbookCell Cell(string? text) => new(text, CellKind.Text);

    private static string Text(ZipArchive zip, string entry)
    {
        using var reader = new StreamReader(zip.GetEntry(entry)!.Open());
        return reader.ReadToEnd();
    }
}
