using System.Reflection;
using System.Runtime.Loader;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.Contest;
using PartsSignal.Analysis.Prediction.ModelFiles;
using PartsSignal.Analysis.Prediction.OddsPipeline;
using PartsSignal.Analysis.Tests.Prediction;

namespace PartsSignal.Analysis.Tests;

/// <summary>The examples in the README compile against the public types and print what the README says.</summary>
public sealed partial class ReadmeExampleTests
{
    private const string ImplicitUsings = "global using System; global using System.Collections.Generic; global using System.IO; global using System.Linq;";

    [Fact]
    public void Example_CompiledAndRun_PrintsWhatTheReadmeSays()
    {
        Assert.Equal(Block("Example", "text"), Run(Block("Example", "csharp")));
    }

    [Fact]
    public void PredictorExample_CompiledAndRunOnAModelFile_PrintsTheModelsOddsAndFigures()
    {
        ClosedCall[] jobs = [.. new TestShop(9).Jobs(600, new DateOnly(2022, 1, 1)).Select(j => j.Call)];
        ShippedModel model = PartLearner.Learn(jobs, new ContestOptions()).Model;
        string path = Path.Combine(Directory.CreateTempSubdirectory("partssignal-").FullName, "predictor.zip");
        using (FileStream file = File.Create(path))
        {
            PartOddsPipeline.Save(file, model);
        }

        string[] printed = Run(Block("The part predictor in another .NET program", "csharp"), path).TrimEnd('\n').Split('\n');
        Directory.Delete(Path.GetDirectoryName(path)!, recursive: true);
        double[] odds = model.Odds(new Call { ApplianceType = "washer", AgeYears = 6.5, ComplaintText = "won't fill", ComplaintKind = "no_fill" }.On(new DateOnly(2026, 11, 2)));
        IEnumerable<string> likeliest = model.Needs.Zip(odds).OrderByDescending(n => n.Second).Take(3).Select(n => $"{n.First} {n.Second:0.00}");
        Assert.Equal(string.Join(", ", likeliest), printed[0]);
        Assert.Equal("3 calls: log loss 13.82, likeliest need right 0.00, need never seen 1.00", printed[3]);
    }

    private static string Block(string heading, string language)
    {
        string readme = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "README.md"));
        string section = readme[readme.IndexOf($"\n## {heading}\n", StringComparison.Ordinal)..];
        return Fence().Matches(section).First(m => m.Groups["language"].Value == language).Groups["body"].Value;
    }

    private static string Run(string program, params string[] args)
    {
        var references = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator).Select(path => MetadataReference.CreateFromFile(path));
        var compilation = CSharpCompilation.Create(
            $"ReadmeExample{program.Length}",
            [CSharpSyntaxTree.ParseText(ImplicitUsings), CSharpSyntaxTree.ParseText(program)],
            references,
            new CSharpCompilationOptions(OutputKind.ConsoleApplication, nullableContextOptions: NullableContextOptions.Enable));
        using var assembly = new MemoryStream();
        Assert.Empty(compilation.Emit(assembly).Diagnostics.Where(d => d.Severity >= DiagnosticSeverity.Warning));
        assembly.Position = 0;
        MethodInfo main = AssemblyLoadContext.Default.LoadFromStream(assembly).EntryPoint!;
        TextWriter console = Console.Out;
        using var printed = new StringWriter { NewLine = "\n" };
        Console.SetOut(printed);
        try
        {
            main.Invoke(null, [args]);
        }
        finally
        {
            Console.SetOut(console);
        }

        return printed.ToString();
    }

    [GeneratedRegex(@"^```(?<language>\w+)\n(?<body>.*?)^```$", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Fence();
}
