using PartsSignal.Pipeline.Review;
using PartsSignal.Pipeline.Running;
using PartsSignal.Pipeline.Tests.Transform;

namespace PartsSignal.Pipeline.Tests.Review;

public sealed class ReviewLoopTests(ReviewShop loaded) : IClassFixture<ReviewShop>, IDisposable
{
    private readonly SmallShop _shop = loaded.Copy();

    public void Dispose() => _shop.Dispose();

    // A load takes a second, so the answers that do not touch each other go in together.
    [Fact]
    public Task Load_AnsweredLists_LoadTheRowsDifferently() => AssertFollowed(
        (ReviewNames.PartNumbers, "AB2I7", "ab 200", "from job_parts select part_number where job_id = 'J1'", "-", "AB-200"),
        (ReviewNames.Complaints, "it sulks", "noise", "from jobs select complaint_kind where job_id = 'J1'", "other", "noise"),
        (ReviewNames.Families, "KP,Tessel", "Kappa", "from jobs select model_family where job_id = 'J4'", "KP", "Kappa"),
        (ReviewNames.Models, "WE1OOX9", "WE100", "from jobs select model_number || ' ' || model_family where job_id = 'J1'", "-", "WE100 F1"),
        (ReviewNames.Serials, "J1,", "2016", "from jobs select made_from where job_id = 'J1'", "2006-04-01", "2016-01-01"),
        (ReviewNames.Collisions, "77.1", "AB-200", "from job_parts select part_number where job_id = 'J2'", "-", "AB-200"),
        (ReviewNames.Collisions, "AB123,part_number", "AB-12/3", "from job_parts select part_number where job_id = 'J3'", "-", "AB-12/3"),
        (ReviewNames.Collisions, "QDW500,", "QDW500", "from jobs select model_family where job_id = 'J2'", "-", "F2"),
        (ReviewNames.Collisions, "TW7", "F4", "from jobs select model_family where job_id = 'J3'", "F5", "F4"));

    [Fact]
    public Task Load_AnsweredWithANewNumberAComponentOrAFamily_LoadTheRowsDifferently() => AssertFollowed(
        (ReviewNames.PartNumbers, "AB2I7", "new", "from job_parts select part_number where job_id = 'J1'", "-", "AB-2I7"),
        (ReviewNames.Components, "thingummy left", "inlet_valve", "from jobs select main_component where job_id = 'J1'", "other_part", "inlet_valve"),
        (ReviewNames.Models, "WE1OOX9", "F1", "from jobs select model_family where job_id = 'J1'", "-", "F1"));

    [Fact]
    public async Task Load_AnsweredCollision_LeavesTheOtherWritingAlone()
    {
        _shop.Answer((ReviewNames.Collisions, "AB123,part_number", "AB-12/3"));
        await _shop.Load();
        Assert.Equal(["AB-12/3", "AB-1/23"], _shop.Rows("from job_parts select part_number where job_id in ('J3', 'J4') order by job_id"));
        Assert.Empty(_shop.Rows("from data_faults where fault_kind = 'part_number_collision'"));
        Assert.Equal(["AB-12/3"], _shop.Rows("from part_aliases select part_number where alias = '88.1'"));
    }

    [Fact]
    public async Task Load_MistypedAnswers_AreSaidAndChangeNothing()
    {
        (string List, string Row, string Answer)[] mistyped =
        [
            (ReviewNames.PartNumbers, "AB2I7", "AB-2l0"),
            (ReviewNames.Complaints, "it sulks", "sulking"),
            (ReviewNames.Components, "thingummy left", "thingummy"),
            (ReviewNames.Models, "WE1OOX9", "WE999"),
            (ReviewNames.Serials, "J1,", "spring 16"),
            (ReviewNames.Collisions, "77.1", "AB-9"),
            (ReviewNames.Collisions, "QDW500,", "QDW7"),
            (ReviewNames.Collisions, "TW7", "F9"),
        ];
        IReadOnlyList<string> before = Store();
        _shop.Answer(mistyped);
        LoadReport report = await _shop.Load();
        Assert.Equal(before, Store());
        Assert.All(mistyped, m => Assert.Contains(_shop.List(m.List), l => l.Contains($"answer not understood: '{m.Answer}'", StringComparison.Ordinal)));
        foreach (IGrouping<string, string> list in mistyped.Select(m => m.Answer).GroupBy(a => mistyped.First(m => m.Answer == a).List))
        {
            Assert.Equal(list.Count(), Count(report, list.Key).NotUnderstood);
        }

        Assert.Equal(
            mistyped.Select(m => m.List).Distinct().Order(StringComparer.Ordinal),
            _shop.Rows("from data_faults select distinct source_file where fault_kind = 'answer_not_understood' order by source_file"));
    }

    [Fact]
    public async Task Load_IgnoredRows_AreNotAskedAgain()
    {
        int open = loaded.Report.Review.Sum(r => r.Open);
        (string List, string Row)[] rows =
            [(ReviewNames.PartNumbers, "AB2I7"), (ReviewNames.Complaints, "it sulks"), (ReviewNames.Components, "thingummy"), (ReviewNames.Models, "WE1OOX9"), (ReviewNames.Serials, "J1,")];
        _shop.Answer([.. rows.Select(r => (r.List, r.Row, "ignore"))]);
        LoadReport report = await _shop.Load();
        Assert.Equal(open - rows.Length, report.Review.Sum(r => r.Open));
        Assert.Equal(0, report.Review.Sum(r => r.NotUnderstood));
    }

    [Fact]
    public async Task Load_TwoAnswersToOneRow_NeitherIsFollowed()
    {
        _shop.Answer((ReviewNames.PartNumbers, "AB2I7", "AB-200"));
        string path = Path.Combine(_shop.Input, ReviewNames.PartNumbers);
        string row = File.ReadLines(path).Single(l => l.EndsWith(",AB-200", StringComparison.Ordinal));
        await File.AppendAllTextAsync(path, row.Replace(",AB-200", ",AB-12/3", StringComparison.Ordinal) + "\n");
        LoadReport report = await _shop.Load();
        Assert.Equal(2, Count(report, ReviewNames.PartNumbers).NotUnderstood);
        Assert.Equal(["-"], _shop.Rows("from job_parts select part_number where job_id = 'J1'"));
    }

    [Fact]
    public void Load_DataFaults_AreListedWithTheRowThatMadeThem()
    {
        Assert.Contains(_shop.List(ReviewNames.DataFaults), l => l.StartsWith("alias_of_two_parts,77.1,", StringComparison.Ordinal) && l.EndsWith("aliases.csv,2", StringComparison.Ordinal));
        Assert.Contains("2017-04", File.ReadAllText(Path.Combine(_shop.Output.Review, "README.txt")), StringComparison.Ordinal);
    }

    private async Task AssertFollowed(params (string List, string Row, string Answer, string Query, string Before, string After)[] cases)
    {
        LoadReport first = loaded.Report;
        Assert.All(cases, c => Assert.Equal([c.Before], _shop.Rows(c.Query)));
        _shop.Answer([.. cases.Select(c => (c.List, c.Row, c.Answer))]);
        LoadReport then = await _shop.Load();
        Assert.All(cases, c => Assert.Equal([c.After], _shop.Rows(c.Query)));
        Assert.All(cases, c => Assert.Contains(_shop.List(c.List), l => l.EndsWith($",,{c.Answer}", StringComparison.Ordinal)));
        foreach (IGrouping<string, string> list in cases.GroupBy(c => c.List, c => c.Row))
        {
            Assert.Equal(0, Count(then, list.Key).NotUnderstood);
            Assert.InRange(Count(then, list.Key).Open, 0, Count(first, list.Key).Open - list.Count());
        }
    }

    private static ReviewCount Count(LoadReport report, string list) => report.Review.Single(r => r.File == list);

    private IReadOnlyList<string> Store() =>
    [
        .. _shop.Rows("from jobs select job_id, model_family, made_from, made_to, complaint_kind, main_component order by job_id"),
        .. _shop.Rows("from job_parts select job_id, part_number, component order by job_id"),
    ];
}

/// <summary>A shop with something to answer in every list, loaded once.</summary>
public sealed class ReviewShop : SharedShop
{
    private const string Settings = """
        {"sources": [
          {"files": "prices.csv", "kind": "parts", "columns": {"part": "Number", "description": "Text"}},
          {"files": "aliases.csv", "kind": "part_aliases", "columns": {"supplier": "Who", "alias": "Theirs", "part": "Number"}},
          {"files": "models.csv", "kind": "models", "columns": {"model": "Model", "brand": "Make", "model_family": "Family"}},
          {"files": "jobs.csv", "kind": "jobs", "dateOrder": "ymd",
           "columns": {"job_id": "Job", "opened_on": "In", "closed_on": "Out", "brand": "Make", "model": "Model", "serial": "Serial", "complaint": "Says", "outcome": "Result"},
           "partGroups": [{"part": "Part", "quantity": "Qty", "description": "What"}],
           "words": {"outcome": {"done": "fixed_with_part"}}}]}
        """;

    internal override void Write(SmallShop shop) => shop
        .Write("shop.json", Settings)
        .Write("prices.csv", "Number,Text\nAB-200,Inlet valve\nAB-12/3,Belt\nAB-1/23,Door lock\nCD-900,Pump\n")
        .Write("aliases.csv", "Who,Theirs,Number\nBrix,77.1,AB-200\nBrix,77.1,CD-900\nBrix,88.1,AB-12/3\n")
        .Write("models.csv", "Model,Make,Family\nWE100,Orvane,F1\nQDW500,Orvane,F2\nQDW5OO,Orvane,F3\nTW7,Orvane,F4\nTW7,Orvane,F5\nKP-100,Tessel,\nKP-200,Tessel,\nKP-300,Tessel,\n")
        .Write("serial-codes.csv", "brand,pattern,year_letters,year_of_first,cycle_years,month_letters\nOrvane,^(?<year>[A-J])(?<month>[0-9]{2}),ABCDEFGHIJ,2000,10,\n")
        .Write("jobs.csv", "Job,In,Out,Make,Model,Serial,Says,Result,Part,Qty,What\nJ1,2024-03-04,2024-03-05,Orvane,WE1OOX9,G0412345,it sulks,done,AB-2I7,1,thingummy left\n"
            + "J2,2024-03-04,2024-03-05,Orvane,QDW5O0,,leaks,done,77.1,1,\nJ3,2024-03-04,2024-03-05,Orvane,TW7,,leaks,done,AB123,1,\nJ4,2024-03-04,2024-03-05,Tessel,KP-200,,leaks,done,AB-1/23,1,\n");
}
