using System.Security.Cryptography;
using PartsSignal.EndToEnd.Tests.OutsideProgram;

namespace PartsSignal.EndToEnd.Tests.Baseline;

/// <summary>
/// Hashes of everything a run of the sample writes, so that no output changes unnoticed. The list of version 0.1.0 stays
/// as it was; the current list is written anew, and its change reviewed, with PARTSSIGNAL_UPDATE=1.
/// </summary>
public sealed class SampleOutputTests(SampleRunFixture sample) : IClassFixture<SampleRunFixture>
{
    private static readonly string[] Folders = ["store", "results", "review", "rejects", "van", "model", "reports"];

    private static string ListPath => Path.Combine(RepositoryFolder.Root, "tests", "EndToEnd.Tests", "Baseline", "TestData", "sample-outputs.sha256");

    [SlowFact]
    public async Task Run_CommittedSample_WritesTheBytesOnRecord()
    {
        string output = await sample.OutputAsync();
        string[] actual = [.. Files(output).OrderBy(f => f.Name, StringComparer.Ordinal).Select(f => $"{Hash(f.Path)}  {f.Name}")];
        if (Environment.GetEnvironmentVariable("PARTSSIGNAL_UPDATE") == "1")
        {
            await File.WriteAllTextAsync(ListPath, string.Join('\n', actual) + "\n", TestContext.Current.CancellationToken);
        }

        Assert.Equal(await File.ReadAllLinesAsync(ListPath, TestContext.Current.CancellationToken), actual);
    }

    [SlowFact]
    public async Task Predictor_OfTheSample_AnswersTheReadmesExampleAsTheReadmeSays()
    {
        string readme = Path.Combine(RepositoryFolder.Root, "analysis", "README.md"), text = await File.ReadAllTextAsync(readme);
        int section = text.IndexOf("## The part predictor in another .NET program", StringComparison.Ordinal);
        string program = Block(text, "```csharp\n", section).Body;
        (int at, string says) = Block(text, "```text\n", section);
        using OutsideProject project = await OutsideProject.BuildAsync(program);
        string printed = await project.RunAsync(Path.Combine(await sample.OutputAsync(), "model", "predictor.zip"));
        if (Environment.GetEnvironmentVariable("PARTSSIGNAL_UPDATE") == "1")
        {
            await File.WriteAllTextAsync(readme, text[..at] + printed + text[(at + says.Length)..]);
            return;
        }

        Assert.Equal(says, printed);
    }

    private static (int At, string Body) Block(string text, string fence, int from)
    {
        int at = text.IndexOf(fence, from, StringComparison.Ordinal) + fence.Length;
        return (at, text[at..text.IndexOf("```", at, StringComparison.Ordinal)]);
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

/// <summary>A run of the committed sample with the fixed key, made once when the first test asks for it.</summary>
public sealed class SampleRunFixture : IDisposable
{
    private readonly ScratchFolder _folder = new();
    private readonly Lazy<Task<string>> _output;

    public SampleRunFixture() => _output = new(async () =>
    {
        string output = Directory.CreateDirectory(_folder.Sub("out")).FullName;
        // Identifiers are made with the key of the output folder, so a fixed key gives fixed bytes.
        File.Copy(Path.Combine(AppContext.BaseDirectory, "Baseline", "TestData", "identity.key"), Path.Combine(output, "identity.key"));
        Assert.Equal(0, (await Partssignal.RunAsync("run", "--input", RepositoryFolder.SampleShop, "--out", output)).ExitCode);
        return output;
    });

    /// <summary>Folder of the run.</summary>
    public Task<string> OutputAsync() => _output.Value;

    public void Dispose() => _folder.Dispose();
}
