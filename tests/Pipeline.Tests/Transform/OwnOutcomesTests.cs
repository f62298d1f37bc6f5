using PartsSignal.Pipeline.Review;

namespace PartsSignal.Pipeline.Tests.Transform;

/// <summary>Words for an outcome that no table knows: listed once with their counts, and read as the owner answers.</summary>
public sealed class OwnOutcomesTests(BlueCardShop loaded) : IClassFixture<BlueCardShop>, IDisposable
{
    internal const string Settings = """
        {"sources": [{"files": "jobs.csv", "kind": "jobs", "dateOrder": "ymd",
           "columns": {"job_id": "Job", "opened_on": "In", "closed_on": "Out", "appliance_type": "Type", "complaint": "Says", "outcome": "Result", "description": "Part"}}]}
        """;

    // Four jobs end in "blue card": one with a part on it. One ends in a word that the tables know.
    internal const string Rows = """
        Job,In,Out,Type,Says,Result,Part
        J1,2026-01-05,2026-01-06,washer,does not drain,Blue card,drain pump
        J2,2026-01-06,2026-01-07,washer,does not drain,blue card,
        J3,2026-01-07,2026-01-08,washer,no fill,Blue Card,
        J4,2026-01-08,,washer,no fill,blue card,
        J5,2026-01-09,2026-01-09,washer,no fill,no fault found,
        """;

    private readonly SmallShop _shop = loaded.Copy();

    public void Dispose() => _shop.Dispose();

    [Fact]
    public void Load_UnknownWord_IsListedOnceWithItsCounts()
    {
        Assert.Equal(["outcome_word,times,jobs_with_part,example,note,answer", "blue card,4,1,J1,,"], _shop.List(ReviewNames.Outcomes));
        Assert.Equal(["J1|fixed_with_part", "J2|unknown", "J3|unknown", "J4|unknown", "J5|no_fault_found"], _shop.Rows("from jobs select job_id, outcome order by 1"));
    }

    // The answer holds however the word is written; an open job stays open.
    [Theory]
    [InlineData("declined", "J1|declined", "J2|declined", "J3|declined", "J4|declined", "J5|no_fault_found")]
    [InlineData("Fixed without part", "J1|fixed_without_part", "J2|fixed_without_part", "J3|fixed_without_part", "J4|fixed_without_part", "J5|no_fault_found")]
    public async Task Load_AnsweredWord_MeansTheAnswer(string answer, params string[] expected)
    {
        _shop.Answer((ReviewNames.Outcomes, "blue card,", answer));
        await _shop.Load();
        Assert.Equal(expected, _shop.Rows("from jobs select job_id, outcome order by 1"));
        Assert.Equal(["J4|open"], _shop.Rows("from jobs select job_id, closing_basis where closed_on is null"));
    }

    [Fact]
    public async Task Load_AnswerThatIsNoOutcome_IsListedAgainWithANote()
    {
        _shop.Answer((ReviewNames.Outcomes, "blue card,", "purple"));
        await _shop.Load();
        Assert.Contains("is no outcome", _shop.List(ReviewNames.Outcomes)[1], StringComparison.Ordinal);
        Assert.Contains("J2|unknown", _shop.Rows("from jobs select job_id, outcome"));
    }
}

/// <summary>That shop, loaded once.</summary>
public sealed class BlueCardShop : SharedShop
{
    internal override void Write(SmallShop shop) => shop.Write("shop.json", OwnOutcomesTests.Settings).Write("jobs.csv", OwnOutcomesTests.Rows);
}
