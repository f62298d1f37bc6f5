using System.Security.Cryptography;
using System.Text.Json.Nodes;
using PartsSignal.Analysis.Sql;
using PartsSignal.SampleShop.Scoring;

namespace PartsSignal.EndToEnd.Tests;

[Collection(RunSmallShopFixture.Collection)]
public sealed class RunTests(RunSmallShopFixture shop)
{
    [Fact]
    public void Run_SmallShop_EndsWellAndNamesTheReport()
    {
        Assert.Equal("", shop.Run.Error);
        Assert.Equal(0, shop.Run.ExitCode);
        Assert.StartsWith("Private: ", shop.Run.Out, StringComparison.Ordinal);
        string report = Directory.EnumerateFiles(Path.Combine(shop.Out, "reports"), "index.html", SearchOption.AllDirectories).Last();
        Assert.Contains("index.html", shop.Run.Out, StringComparison.Ordinal);
        Assert.True(new FileInfo(report).Length > 10_000);
    }

    [Fact]
    public void Record_SmallShop_BooksBalancePerFileAndInAll()
    {
        JsonArray files = shop.Record["files"]!.AsArray();
        Assert.True(files.Count >= 10);
        string[] ways = ["loaded", "duplicate", "replaced", "rejected"];
        Assert.All(files, f => Assert.Equal((long)f!["read"]!, ways.Sum(w => (long)f[w]!)));
        Assert.All([.. ways, "read", "not_data"], w => Assert.Equal((long)shop.Record["rows"]![w]!, files.Sum(f => (long)f![w]!)));
        Assert.True((long)shop.Record["rows"]!["rejected"]! < 0.05 * (long)shop.Record["rows"]!["read"]!);
    }

    [Fact]
    public void Record_SmallShop_CarriesModelAndPlanFigures()
    {
        JsonNode prediction = shop.Record["prediction"]!;
        Assert.True((int)prediction["jobs_tested"]! > 100);
        Assert.True((double)prediction["log_loss"]! < (double)prediction["log_loss_complaint_only"]!);
        Assert.Null(prediction["log_loss_best_possible"]);
        Assert.InRange((double)prediction["top3"]!, (double)prediction["top1"]!, 1);
        JsonNode van = shop.Record["van"]!;
        Assert.True((int)van["jobs_replayed"]! > 50);
        Assert.InRange((double)van["completion_plan"]!, 0.2, (double)van["completion_hindsight"]! + 1e-9);
        Assert.True((long)shop.Record["peak_memory_mb"]! > 0);
    }

    [Fact]
    public void Score_SmallShop_GivesWhatTheRunCannotKnow()
    {
        JsonObject score = RunScore.Compute(shop.Out);
        Assert.True((double)score["prediction"]!["log_loss_best_possible"]! < (double)shop.Record["prediction"]!["log_loss"]!);
        Assert.InRange((double)score["prediction"]!["gap_closed"]!, 0, 1);
        Assert.InRange((double)score["van"]!["true_demand_attained"]!, (double)score["van"]!["true_demand_attained_most_used"]!, 1.003);
    }

    [Theory]
    [InlineData("van")]
    [InlineData("van", "--list", "plan")]
    [InlineData("van", "--list", "orders")]
    [InlineData("van", "--list", "booked")]
    [InlineData("van", "--list", "next")]
    [InlineData("rates")]
    [InlineData("lookup", "--type", "washer", "--complaint", "does not fill")]
    public async Task Table_OfTheSmallShop_FitsEightyColumns(params string[] command)
    {
        Partssignal answer = await Partssignal.RunAsync([.. command, "--input", shop.Input, "--out", shop.Out]);
        Assert.Equal("", answer.Error);
        Assert.All(answer.Out.Split('\n'), line => Assert.InRange(line.TrimEnd().Length, 0, 80));
    }

    // In the plain run each part has such a test: staging, the tables whatever the order of their rows, what is learned, the report.
    [LongFact]
    public async Task Run_Twice_SameBytesInResults()
    {
        using var again = new ScratchFolder();
        Partssignal second = await Partssignal.RunAsync("run", "--input", shop.Input, "--out", again.Path);
        Assert.Equal(0, second.ExitCode);
        Assert.Equal(Hashes(Path.Combine(shop.Out, "results")), Hashes(Path.Combine(again.Path, "results")));
    }

    [Fact]
    public async Task Report_ResultsOfAnotherVersion_OneLineSaysWhatToDo()
    {
        using var other = new ScratchFolder();
        FolderCopy.Write(shop.Out, other.Path);
        using (Database database = Database.Open())
        {
            string table = Path.Combine(other.Path, "results", "register_untold.parquet");
            database.Execute($"copy (select * exclude (expected) from read_parquet({Database.Literal(Path.Combine(shop.Out, "results", "register_untold.parquet"))})) to {Database.Literal(table)}");
        }

        Partssignal answer = await Partssignal.RunAsync("report", "--input", shop.Input, "--out", other.Path);
        Assert.Equal(1, answer.ExitCode);
        Assert.Equal("These results were made by another version of the program. Run 'partssignal run' once; your files and answers stay as they are.", answer.Error.Trim());
    }

    private static string[] Hashes(string folder) =>
        [.. Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Order(StringComparer.Ordinal)
            .Select(f => Path.GetRelativePath(folder, f) + " " + Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(f))))];
}
