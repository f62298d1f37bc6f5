using System.Diagnostics;
using System.Text.RegularExpressions;
using PartsSignal.Pipeline.Commands;

namespace PartsSignal.Pipeline.Tests.Commands;

public sealed partial class CompletionTests
{
    [Theory]
    [InlineData("bash")]
    [InlineData("zsh")]
    public async Task Script_EveryVerb_KnowsEveryOptionThatItsHelpNames(string shell)
    {
        string script = await RunAsync("completion", shell);
        foreach (string verb in await VerbsOfTheHelpAsync())
        {
            string words = Regex.Match(script, $@"^    {verb}\) (.*)$", RegexOptions.Multiline).Groups[1].Value;
            string[] options = [.. LongOption().Matches(await RunAsync(verb, "--help")).Select(m => m.Value).Distinct()];
            Assert.Contains("--help", options);
            Assert.All(options, o => Assert.Matches($@"{o}(?![\w-])", words));
        }
    }

    [Fact]
    public async Task Bash_InTheShellItself_CompletesVerbsOptionsAndWords()
    {
        Assert.SkipUnless(File.Exists("/bin/bash") || File.Exists("/usr/bin/bash"), "no bash on this machine");
        Assert.Equal(["lookup", "load"], (await CompleteAsync("partssignal", "lo")).OrderDescending());
        Assert.Equal(["--budget"], await CompleteAsync("partssignal", "van", "--bu"));
        Assert.Equal(["table", "csv", "json"], await CompleteAsync("partssignal", "van", "--format", ""));
        Assert.Contains("orders", await CompleteAsync("partssignal", "van", "--list", ""));
        Assert.Contains("zsh", await CompleteAsync("partssignal", "completion", ""));
        Assert.Empty(await CompleteAsync("partssignal", "van", "--van", ""));
    }

    private static async Task<string[]> CompleteAsync(params string[] words)
    {
        string script = await RunAsync("completion", "bash");
        string line = string.Join(' ', words.Select(w => $"'{w}'"));
        string ask = $"{script}\nCOMP_WORDS=({line}); COMP_CWORD={words.Length - 1}; _partssignal; printf '%s\\n' \"${{COMPREPLY[@]}}\"";
        using var bash = Process.Start(new ProcessStartInfo("bash", ["--norc", "-c", ask]) { RedirectStandardOutput = true })!;
        string answer = await bash.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await bash.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal(0, bash.ExitCode);
        return answer.Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }

    private static async Task<IReadOnlyList<string>> VerbsOfTheHelpAsync()
    {
        string help = await RunAsync("--help");
        string[] verbs = [.. VerbLine().Matches(help[help.IndexOf("COMMANDS:", StringComparison.Ordinal)..]).Select(m => m.Groups[1].Value)];
        Assert.Equal(VerbList.All.Count, verbs.Length);
        return verbs;
    }

    private static async Task<string> RunAsync(params string[] args)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        Assert.Equal(0, await CommandHost.RunAsync(args, output, error, TimeProvider.System));
        return output.ToString().ReplaceLineEndings("\n");
    }

    [GeneratedRegex(@"--[a-z][a-z-]*")]
    private static partial Regex LongOption();

    [GeneratedRegex(@"^    ([a-z]+) ", RegexOptions.Multiline)]
    private static partial Regex VerbLine();
}
