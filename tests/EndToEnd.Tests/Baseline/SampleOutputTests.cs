using System.Security.Cryptography;

namespace PartsSignal.EndToEnd.Tests.Baseline;

/// <summary>
/// Hashes of everything a run of the sample writes, so that no output changes unnoticed. The list of version 0.1.0 stays
/// as it was; the current list is written anew, and its change reviewed, with PARTSSIGNAL_UPDATE=1.
/// </summary>
public sealed class SampleOutputTests
{
    private static readonly string[] Folders = ["store", "results", "review", "rejects", "van", "model", "reports"];

    private static string ListPath => Path.Combine(RepositoryFolder.Root, "tests", "EndToEnd.Tests", "Baseline", "TestData", "sample-outputs.sha256");

    [SlowFact]
    public async Task Run_CommittedSample_WritesTheBytesOnRecord()
    {
        using var folder = new ScratchFolder();
        string output = Directory.CreateDirectory(folder.Sub("out")).FullName;
        // Identifiers are made with the key of the output folder, so a fixed key gives fixed bytes.
        File.Copy(Path.Combine(AppContext.BaseDirectory, "Baseline", "TestData", "identity.key"), Path.Combine(output, "identity.key"));
        Assert.Equal(0, (await Partssignal.RunAsync("run", "--input", RepositoryFolder.SampleShop, "--out", output)).ExitCode);

        string[] actual = [.. Files(output).OrderBy(f => f.Name, StringComparer.Ordinal).Select(f => $"{Hash(f.Path)}  {f.Name}")];
        if (Environment.GetEnvironmentVariable("PARTSSIGNAL_UPDATE") == "1")
        {
            await File.WriteAllTextAsync(ListPath, string.Join('\n', actual) + "\n", TestContext.Current.CancellationToken);
        }

        Assert.Equal(await File.ReadAllLinesAsync(ListPath, TestContext.Current.CancellationToken), actual);
    }

    private static IEnumerable<(string Name, string Path)> Files(string output) =>
        Folders.SelectMany(folder => Directory.EnumerateFiles(Path.Combine(output, folder), "*", SearchOption.AllDirectories))
            .Append(Path.Combine(output, "lookup.html"))
            .Select(file => (Path.GetRelativePath(output, file).Replace('\\', '/'), file));

    private static string Hash(string file)
    {
        using FileStream stream = File.OpenRead(file);
        return Convert.ToHexStringLower(SHA256.HashData(stream));
    }
}
