using PartsSignal.Pipeline.Review;

namespace PartsSignal.Pipeline.Tests.Transform;

/// <summary>Models that no list names: their families, and writings that look alike.</summary>
public sealed class OwnFamiliesTests : IDisposable
{
    private const string Jobs = """{"files": "jobs.csv", "kind": "jobs", "dateOrder": "ymd", "columns": {"job_id": "Job", "opened_on": "In", "closed_on": "Out", "brand": "Make", "model": "Model", "complaint": "Says"}}""";
    private const string Models = """{"files": "models.csv", "kind": "models", "columns": {"model": "Model", "brand": "Make", "model_family": "Family"}}""";
    private readonly SmallShop _shop = new();

    public void Dispose() => _shop.Dispose();

    [Fact]
    public async Task Load_ModelOfNoFamily_IsItsOwnOnceItIsNoSlip()
    {
        Write(("QX77", 3), ("ZT95", 2));
        await _shop.Load();
        Assert.Equal(["QX77|QX77|3", "ZT95|-|2"], _shop.Rows("from jobs select model_raw, model_family, count(*) group by all order by 1"));
        Assert.Single(_shop.List(ReviewNames.Families));
    }

    [Fact]
    public async Task Load_WritingThatLooksAlike_JoinsTheUsualOneAndIsListed()
    {
        Write(("QX-70", 4), ("QX7O", 1), ("qx 70", 1), ("QXI0", 1));
        await _shop.Load();
        Assert.Equal(
            ["QX-70|QX-70", "QX7O|QX-70", "QXI0|-", "qx 70|QX-70"],
            _shop.Rows("from jobs select distinct model_raw, model_family order by 1"));
        Assert.Equal(["QX7O|QX-70|confusable"], _shop.Rows("from jobs select model_raw, model_number, model_basis where model_raw = 'QX7O'"));
        Assert.Contains(_shop.List(ReviewNames.Models), l => l.Contains("QX7O", StringComparison.Ordinal) && l.Contains("QX-70", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Load_ListOfOtherModels_LeavesAnApprovedFamilyAlone()
    {
        Write(("KPX-100", 2), ("KPX-200", 2), ("KPX-300", 2));
        await _shop.Load();
        _shop.Answer((ReviewNames.Families, "KPX,", "Kappa"));
        await _shop.Load();
        Assert.Equal(["Kappa"], _shop.Rows("from jobs select distinct model_family"));
        _shop.Write("models.csv", "Model,Make,Family\nTW-7,Tessel,Tau\n").Write("shop.json", $$"""{"sources": [{{Models}}, {{Jobs}}]}""");
        await _shop.Load();
        Assert.Equal(["Kappa"], _shop.Rows("from jobs select distinct model_family"));
    }

    private void Write(params (string Model, int Times)[] models)
    {
        var rows = models.SelectMany(m => Enumerable.Repeat(m.Model, m.Times)).Select((m, i) => $"J{i},2024-03-04,2024-03-05,Tessel,{m},leaks");
        _shop.Write("jobs.csv", "Job,In,Out,Make,Model,Says\n" + string.Join('\n', rows) + "\n").Write("shop.json", $$"""{"sources": [{{Jobs}}]}""");
    }
}
