using System.Reflection;
using System.Runtime.Loader;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace PartsSignal.Analysis.Tests;

/// <summary>The example in the README compiles against the public types and prints what the README says.</summary>
public sealed partial class ReadmeExampleTests
{
    private const string ImplicitUsings = "global using System; global using System.Collections.Generic; global using System.Linq;";

    [Fact]
    public void Example_CompiledAndRun_PrintsWhatTheReadmeSays()
    {
        string readme = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "README.md"));
        Assert.Equal(Block(readme, "text"), Run(Block(readme, "csharp")));
    }

    private static string Block(string readme, string language) =>
        Assert.Single(Fence().Matches(readme), m => m.Groups["language"].Value == language).Groups["body"].Value;

    private static string Run(string program)
    {
        var references = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator).Select(path => MetadataReference.CreateFromFile(path));
        var compilation = CSharpCompilation.Create(
            "ReadmeExample",
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
            main.Invoke(null, [Array.Empty<string>()]);
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
