using System.Diagnostics;

namespace PartsSignal.EndToEnd.Tests.Crashes;

/// <summary>The program in a process of its own, which can be killed or kept short of something.</summary>
internal static class ProgramProcess
{
    /// <summary>A command line that a shell understands: <c>dotnet exec partssignal.dll</c>.</summary>
    public static string Shell { get; } = $"dotnet exec '{Path.Combine(AppContext.BaseDirectory, "partssignal.dll")}'";

    /// <summary>Runs to the end, or kills it without warning after a while.</summary>
    /// <param name="killAfter">How long it lives; null: as long as it needs.</param>
    /// <param name="args">The command line.</param>
    /// <returns>Exit code; null: killed.</returns>
    public static async Task<int?> RunAsync(TimeSpan? killAfter, params string[] args)
    {
        var start = new ProcessStartInfo("dotnet", ["exec", Path.Combine(AppContext.BaseDirectory, "partssignal.dll"), .. args])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        CompileFaster(start);
        using Process process = Process.Start(start)!;
        Task output = Task.WhenAll(process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        bool killed = false;
        if (killAfter is { } life)
        {
            using var timer = new CancellationTokenSource(life);
            try
            {
                await process.WaitForExitAsync(timer.Token);
            }
            catch (OperationCanceledException)
            {
                process.Kill();
                killed = true;
            }
        }

        await process.WaitForExitAsync();
        await output;
        return killed ? null : process.ExitCode;
    }

    /// <summary>Runs lines of a POSIX shell.</summary>
    /// <returns>Exit code and what it wrote.</returns>
    public static async Task<(int ExitCode, string Out)> ShellAsync(string script, bool ownMounts = false)
    {
        var start = new ProcessStartInfo(ownMounts ? "unshare" : "bash", ownMounts ? ["-rm", "bash", "-c", script] : ["-c", script])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        CompileFaster(start);
        using Process process = Process.Start(start)!;
        Task<string> error = process.StandardError.ReadToEndAsync();
        string text = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        return (process.ExitCode, text + await error);
    }

    /// <summary>Lets a process compile its code in less time: one that lives for seconds spends most of them on that.</summary>
    public static void CompileFaster(ProcessStartInfo start)
    {
        start.Environment["DOTNET_EnableWriteXorExecute"] = "0";
        start.Environment["DOTNET_TieredPGO"] = "0";
        start.Environment["DOTNET_TC_CallCountThreshold"] = "3E8";
    }
}
