using System.IO.Compression;
using System.Text.Json.Nodes;

namespace PartsSignal.EndToEnd.Tests.Baseline;

/// <summary>
/// What an owner has kept from version 0.1.0 still works: the output folder answers, and the shop's files, settings and
/// answered review lists load. Both were made by that version from a fictional shop of 400 jobs.
/// </summary>
public sealed class EarlierVersionTests : IDisposable
{
    private readonly ScratchFolder _folder = new();

    private string Shop => _folder.Sub("shop");

    private string Out => _folder.Sub("out");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task OutputFolder_OfTheFirstVersion_StillAnswers()
    {
        Unpack("shop-0.1.0.zip", Shop);
        Unpack("out-0.1.0.zip", Out);

        Partssignal lookup = await Partssignal.RunAsync("lookup", "--input", Shop, "--out", Out, "--type", "washer", "--complaint", "does not fill");
        Assert.Equal("", lookup.Error);
        Assert.Contains("inlet valve", lookup.Out, StringComparison.OrdinalIgnoreCase);

        Partssignal rates = await Partssignal.RunAsync("rates", "--input", Shop, "--out", Out, "--component", "inlet_valve", "--format", "csv");
        Assert.Equal("", rates.Error);
        Assert.Contains("inlet_valve", rates.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Files_OfTheFirstVersion_LoadToTheSameBooksAndEveryAnswerIsTaken()
    {
        Unpack("shop-0.1.0.zip", Shop);
        Unpack("out-0.1.0.zip", Out);
        JsonNode before = JsonNode.Parse(await File.ReadAllTextAsync(Path.Combine(Out, "run.json"), TestContext.Current.CancellationToken))!["rows"]!;

        Partssignal load = await Partssignal.RunAsync("load", "--input", Shop, "--out", Out, "--format", "csv");

        Assert.Equal("", load.Error);
        string all = load.Out.Split('\n').Single(l => l.StartsWith("all files", StringComparison.Ordinal)).Trim();
        Assert.Equal(
            [.. new[] { "read", "loaded", "duplicate", "replaced", "rejected" }.Select(k => ((long)before[k]!).ToString(System.Globalization.CultureInfo.InvariantCulture))],
            all.Split(',')[^6..^1]);
        string[] lists = Directory.GetFiles(Path.Combine(Out, "review"), "review-*.csv");
        Assert.NotEmpty(lists);
        Assert.All(lists, list => Assert.DoesNotContain("not understood", File.ReadAllText(list), StringComparison.Ordinal));
    }

    private static void Unpack(string name, string folder) =>
        ZipFile.ExtractToDirectory(Path.Combine(AppContext.BaseDirectory, "Baseline", "TestData", name), folder);
}
