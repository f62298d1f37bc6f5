using System.Diagnostics;

namespace PartsSignal.EndToEnd.Tests.OutsideProgram;

/// <summary>A console project outside the solution that references the built analysis library and nothing else of this repository.</summary>
internal sealed class OutsideProject : IDisposable
{
    private readonly ScratchFolder _folder = new();

    /// <summary>Builds a program. Works offline: the libraries are those that lie beside the tests.</summary>
    public static async Task<OutsideProject> BuildAsync(string program)
    {
        var project = new OutsideProject();
        string beside = AppContext.BaseDirectory;
        project._folder.Write("outside.csproj", $"""
            <Project Sdk="Microsoft.NET.Sdk">
              <PropertyGroup>
                <OutputType>Exe</OutputType>
                <TargetFramework>net10.0</TargetFramework>
                <Nullable>enable</Nullable>
                <ImplicitUsings>enable</ImplicitUsings>
                <UseAppHost>false</UseAppHost>
                <TreatWarningsAsErrors>true</TreatWarningsAsErrors>
                <InvariantGlobalization>true</InvariantGlobalization>
              </PropertyGroup>
              <ItemGroup>
                <Reference Include="{beside}PartsSignal.Analysis.dll" />
                <Reference Include="{beside}Microsoft.ML*.dll" />
                <Reference Include="{beside}Newtonsoft.Json.dll" />
                <Reference Include="{beside}System.Numerics.Tensors.dll" />
              </ItemGroup>
            </Project>
            """);
        project._folder.Write("Program.cs", program);
        (int code, string said) = await RunAsync(project._folder.Path, "build", "-c", "Release", "-nologo", "-v", "q", "-o", "built", "-p:UseSharedCompilation=false", "-nodeReuse:false");
        Assert.True(code == 0, said);
        return project;
    }

    /// <summary>Runs it and gives what it printed.</summary>
    public async Task<string> RunAsync(params string[] args)
    {
        (int code, string said) = await RunAsync(_folder.Path, ["exec", Path.Combine("built", "outside.dll"), .. args]);
        Assert.True(code == 0, said);
        return said.ReplaceLineEndings("\n");
    }

    /// <summary>Path of a file beside the program.</summary>
    public string Sub(string name) => _folder.Sub(name);

    public void Dispose() => _folder.Dispose();

    private static async Task<(int Code, string Said)> RunAsync(string folder, params string[] args)
    {
        var start = new ProcessStartInfo("dotnet", args) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true };
        using Process process = Process.Start(start)!;
        Task<string> output = process.StandardOutput.ReadToEndAsync(), errors = process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        return (process.ExitCode, await output + await errors);
    }
}
