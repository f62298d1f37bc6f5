using PartsSignal.Pipeline.Bench;
using PartsSignal.Pipeline.Review;

namespace PartsSignal.EndToEnd.Tests.Bench;

/// <summary>What an owner corrects and answers on the pages, and what the next load makes of it.</summary>
public sealed class OwnerFormsTests : IClassFixture<LoadedLog>, IDisposable
{
    private const string Log = LoadedLog.Log;
    private readonly LoadedLog _loaded;
    private readonly ScratchFolder _home;
    private readonly ShopFolder _shop;

    public OwnerFormsTests(LoadedLog loaded)
    {
        _loaded = loaded;
        (_home, _shop) = loaded.Copy();
    }

    public void Dispose() => _home.Dispose();

    [Fact]
    public async Task Mend_RowWithAWrongDay_LoadsOnceAndItsFileStaysAsItWas()
    {
        Assert.Contains("refused", _loaded.Load.Out, StringComparison.Ordinal);
        string file = Path.Combine(_shop.Output.Rejects, "jobs.csv.rejects.csv");
        var rows = RefusedRows.Read(file);
        RefusedRow row = Assert.Single(rows.Rows);
        Assert.Equal(("3", "Call date"), (row.Line, row.FaultyColumn));
        Assert.Equal(["J2", "2026-13-04", "2026-08-05", "Orvane", "WE100", "it sulks", "P200"], row.Cells);

        rows.Mend(_shop.Files, "jobs.csv.rejects.csv", [(row, [.. row.Cells.Select(c => c == "2026-13-04" ? "2026-08-04" : c)])]);
        string loaded = (await LoadAsync("--format", "csv")).Out;
        Assert.Matches("mended/jobs.csv.rejects.csv,jobs,1,1,0,0,0", loaded);
        Assert.Equal(Log, await File.ReadAllTextAsync(Path.Combine(_shop.Files, "jobs.csv")));

        // The mended row stands for the refused one, and the row in the file is known to be settled by what it says.
        Assert.Contains("\njobs.csv,jobs,3,2,0,1,0,", loaded, StringComparison.Ordinal);
        new SettledRows(_shop.Folder).Add([row.Key]);
        Assert.Contains(RefusedRows.Read(file).Rows.Single().Key, new SettledRows(_shop.Folder).Keys);
    }

    [Fact]
    public async Task Mend_WronglyAndThenInTheFileItself_CountsEachRowOnceAndNeverDoublesColumns()
    {
        var rows = RefusedRows.Read(Path.Combine(_shop.Output.Rejects, "jobs.csv.rejects.csv"));
        rows.Mend(_shop.Files, "jobs.csv.rejects.csv", [(rows.Rows[0], [.. rows.Rows[0].Cells.Select(c => c == "2026-13-04" ? "2026-14-04" : c)])]);
        string loaded = (await LoadAsync("--format", "csv")).Out;
        Assert.Contains("\njobs.csv,jobs,3,2,0,1,0,", loaded, StringComparison.Ordinal);
        Assert.Contains("\nmended/jobs.csv.rejects.csv,jobs,1,0,0,0,1,", loaded, StringComparison.Ordinal);
        var again = RefusedRows.Read(Path.Combine(_shop.Output.Rejects, "jobs.csv.again.rejects.csv"));
        Assert.Equal(rows.Header, again.Header);
        again.Mend(_shop.Files, "jobs.csv.again.rejects.csv", [(again.Rows[0], [.. again.Rows[0].Cells.Select(c => c == "2026-14-04" ? "2026-08-04" : c)])]);
        Assert.Contains("\nall files,,5,3,0,2,0,", (await LoadAsync("--format", "csv")).Out, StringComparison.Ordinal);

        // Correcting the file itself works as well, and the job still counts once.
        await File.WriteAllTextAsync(Path.Combine(_shop.Files, "jobs.csv"), Log.Replace("2026-13-04", "2026-08-04", StringComparison.Ordinal));
        string corrected = (await LoadAsync("--format", "csv")).Out;
        Assert.Contains("\njobs.csv,jobs,3,", corrected, StringComparison.Ordinal);
        Assert.Matches("\nall files,,5,3,[01],[12],0,", corrected);
    }

    [Fact]
    public void Save_AnswersGivenOneAfterTheOther_AreAllKeptAndCanBeTakenBack()
    {
        QuestionList list = Complaints();
        Assert.Equal(["it grumbles at night"], list.Questions.Select(q => q.Text.ToLowerInvariant()));
        list.Save(_shop.Output.Review, _shop.Files, new Dictionary<int, string> { [0] = "noise" });
        Assert.Equal("noise", Complaints().Questions.Single().Answer);
        Complaints().Save(_shop.Output.Review, _shop.Files, new Dictionary<int, string>());
        Assert.Equal("noise", Complaints().Questions.Single().Answer);
        Complaints().Save(_shop.Output.Review, _shop.Files, new Dictionary<int, string> { [0] = "No fill" });
        Assert.Equal("no_fill", Complaints().Questions.Single().Answer);
        Complaints().Save(_shop.Output.Review, _shop.Files, new Dictionary<int, string> { [0] = "" });
        Assert.Equal("", Complaints().Questions.Single().Answer);
    }

    private QuestionList Complaints() => QuestionList.All(_shop.Output.Review, _shop.Files).Single(l => l.Title == "Complaints");

    private Task<Partssignal> LoadAsync(params string[] more) => Partssignal.RunAsync(["load", "--input", _shop.Files, "--out", _shop.Output.Root, .. more]);
}

/// <summary>A shop of the bench with a row to mend and a word to answer, loaded once.</summary>
public sealed class LoadedLog : IAsyncLifetime
{
    internal const string Log = "Job number,Call date,Finished,Make,Model number,Customer says,Part 1\n"
        + "J1,2026-08-03,2026-08-04,Orvane,WE100,does not heat,P100\n"
        + "J2,2026-13-04,2026-08-05,Orvane,WE100,it sulks,P200\n"
        + "J3,2026-08-05,2026-08-06,Orvane,WE200,it grumbles at night,P300\n";

    private const string Settings = """
        { "sources": [ { "files": "jobs.csv", "kind": "jobs", "columns": { "job_id": "Job number", "opened_on": "Call date", "closed_on": "Finished", "brand": "Make", "model": "Model number", "complaint": "Customer says", "part": "Part 1" } } ] }
        """;

    private readonly ScratchFolder _home = new();
    private ShopFolder _shop = null!;

    internal Partssignal Load { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        _shop = new KnownShops(_home.Sub("home")).Add("Millrace");
        File.WriteAllText(Path.Combine(_shop.Files, "jobs.csv"), Log);
        File.WriteAllText(Path.Combine(_shop.Files, "shop.json"), Settings);
        Load = await Partssignal.RunAsync("load", "--input", _shop.Files, "--out", _shop.Output.Root);
    }

    public ValueTask DisposeAsync()
    {
        _home.Dispose();
        return ValueTask.CompletedTask;
    }

    internal (ScratchFolder Home, ShopFolder Shop) Copy()
    {
        ScratchFolder copy = _home.Copy();
        return (copy, _shop with { Folder = copy.Sub(Path.GetRelativePath(_home.Path, _shop.Folder)) });
    }
}
