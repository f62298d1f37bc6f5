namespace PartsSignal.EndToEnd.Tests.UnknownShops;

public sealed class TableGraderTests
{
    private static readonly TableTruth Table = new(
        "calls.csv",
        null,
        "jobs",
        [],
        new Dictionary<string, IReadOnlyList<string>> { ["opened_on"] = ["Date in"], ["part"] = ["Part 1", "Part 2"], ["complaint"] = ["Fault"] },
        ["opened_on", "part", "complaint"],
        new Dictionary<string, IReadOnlyList<string>> { ["Imported"] = ["opened_on"] });

    [Fact]
    public void Grade_EveryEssentialColumnMapped_IsRight() => Assert.Equal(Verdict.Right, Grade("jobs", [("opened_on", "date in"), ("part", "part 1"), ("part", "part 2"), ("complaint", "fault")]).Verdict);

    [Fact]
    public void Grade_OnePartGroupUnread_IsSilent()
    {
        TableGrade grade = Grade("jobs", [("opened_on", "date in"), ("part", "part 1"), ("complaint", "fault")]);
        Assert.Equal(Verdict.Silent, grade.Verdict);
        Assert.Equal([Verdict.Right, Verdict.Silent, Verdict.Right], grade.Essential);
    }

    [Fact]
    public void Grade_ForbiddenColumnTaken_IsSilentUnlessAsked()
    {
        (string, string)[] columns = [("opened_on", "imported"), ("part", "part 1"), ("part", "part 2"), ("complaint", "fault")];
        Assert.Equal(Verdict.Silent, Grade("jobs", columns).Verdict);
        Assert.Equal(Verdict.Asked, Grade("jobs", columns, new AskedQuestion("calls.csv/field/opened_on", "calls.csv", null, null, "opened_on", ["Date in", "Imported", "none"], "Which column?")).Verdict);
    }

    [Fact]
    public void Grade_WrongKind_IsAskedOnlyByAQuestionOnTheKindOfThatTable()
    {
        Assert.Equal(Verdict.Silent, Grade("parts", [], new AskedQuestion("other.csv/kind", "other.csv", null, null, null, ["jobs"], "What is it?")).Verdict);
        Assert.Equal(Verdict.Silent, Grade("parts", [], new AskedQuestion("calls.csv/dates", "calls.csv", null, null, null, ["dmy"], "Which order?")).Verdict);
        Assert.Equal(Verdict.Asked, Grade("parts", [], new AskedQuestion("calls.csv/kind", "calls.csv", null, null, null, ["jobs"], "What is it?")).Verdict);
    }

    [Fact]
    public void Grade_QuestionAboutAnotherTable_CountsOnlyIfItNamesThisOneToo()
    {
        (string, string)[] columns = [("opened_on", "imported"), ("part", "part 1"), ("part", "part 2"), ("complaint", "fault")];
        var asked = new AskedQuestion("calls 2.csv/field/opened_on", "calls 2.csv", null, null, "opened_on", ["Date in", "Imported", "none"], "Which column?");
        Assert.Equal(Verdict.Silent, Grade("jobs", columns, asked).Verdict);
        Assert.Equal(Verdict.Asked, Grade("jobs", columns, asked with { Also = [("calls.csv", null)] }).Verdict);
    }

    private static TableGrade Grade(string kind, (string, string)[] columns, params AskedQuestion[] questions) =>
        TableGrader.Grade(Table, new ShopReading([new SavedMap("*.csv", [], kind, columns)], questions));
}
