using PartsSignal.Pipeline.Commands;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Tests.Commands;

/// <summary>Help texts are kept as they are read; PARTSSIGNAL_WRITE_SNAPSHOTS=1 writes them anew.</summary>
public sealed class HelpTests
{
    public static TheoryData<string> Verbs => [.. VerbList.All.Select(v => v.Name)];

    [Theory]
    [MemberData(nameof(Verbs))]
    public async Task Help_OfAVerb_ReadsAsKept(string verb)
    {
        string help = await HelpAsync(verb, "--help");
        Assert.Contains("EXAMPLES:", help, StringComparison.Ordinal);
        Assert.Contains($"partssignal {verb} ", help, StringComparison.Ordinal);
        AssertKept($"help-of-{verb}", help);
    }

    [Fact]
    public async Task Help_OfTheProgram_ReadsAsKept()
    {
        string help = await HelpAsync("--help");
        Assert.All(VerbList.All, v => Assert.Contains($"    {v.Name} ", help, StringComparison.Ordinal));
        AssertKept("help-of-the-program", help);
    }

    [Fact]
    public async Task UnknownOption_SaysWhatToDo()
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        int code = await CommandHost.RunAsync(["van", "--bugdet", "100"], output, error, TimeProvider.System);
        Assert.Equal(ExitCode.BadInput, code);
        Assert.Contains("bugdet", error.ToString(), StringComparison.Ordinal);
        Assert.Contains("--help", error.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task RunAsync_ValueThatIsNoNumber_SaidWithoutNamesOfTheCode()
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        Assert.Equal(ExitCode.BadInput, await CommandHost.RunAsync(["lookup", "--complaint", "leaks", "--age", "abc"], output, error, TimeProvider.System));
        Assert.Equal("'abc' must be a plain number, for example 12. Try --help.", error.ToString().Trim());
    }

    [Fact]
    public async Task RunAsync_ValueThatIsNoChoice_NamesTheChoices()
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        Assert.Equal(ExitCode.BadInput, await CommandHost.RunAsync(["van", "--format", "paper"], output, error, TimeProvider.System));
        Assert.Equal("'paper' must be one of table, csv, json. Try --help.", error.ToString().Trim());
    }

    private static async Task<string> HelpAsync(params string[] args)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        Assert.Equal(0, await CommandHost.RunAsync(args, output, error, TimeProvider.System));
        string help = string.Join('\n', output.ToString().ReplaceLineEndings("\n").Split('\n').Select(l => l.TrimEnd()));
        Assert.DoesNotContain('\u001b', help);
        Assert.All(help.Split('\n'), line => Assert.True(line.Length <= 80, line));
        return help;
    }

    private static void AssertKept(string name, string text)
    {
        string path = Path.Combine(RepositoryFolder.Root, "tests", "Pipeline.Tests", "TestData", "help", name + ".txt");
        if (Environment.GetEnvironmentVariable("PARTSSIGNAL_WRITE_SNAPSHOTS") == "1")
        {
            File.WriteAllText(path, text);
        }

        Assert.Equal(File.ReadAllText(path).ReplaceLineEndings("\n"), text);
    }
}
