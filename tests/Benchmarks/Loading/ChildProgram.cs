using System.Diagnostics;
using System.Globalization;

namespace PartsSignal.Benchmarks.Loading;

/// <summary>The program in a process of its own, so that its memory is its own.</summary>
/// <param name="Seconds">Wall time.</param>
/// <param name="PeakMegabytes">Most memory it held (VmHWM); 0 where the system does not tell.</param>
/// <param name="Steps">What it wrote to stderr.</param>
/// <param name="Output">What it wrote to stdout.</param>
internal sealed record ChildProgram(double Seconds, long PeakMegabytes, string Steps, string Output)
{
    /// <summary>Runs a command line.</summary>
    /// <exception cref="InvalidOperationException">It failed.</exception>
    public static ChildProgram Run(params string[] args) => Start("partssignal.dll", args);

    /// <summary>Runs this program itself with other arguments.</summary>
    /// <exception cref="InvalidOperationException">It failed.</exception>
    public static ChildProgram RunSelf(params string[] args) => Start("PartsSignal.Benchmarks.dll", args);

    private static ChildProgram Start(string program, string[] args)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardError = true, RedirectStandardOutput = true };
        foreach (string arg in args.Prepend(Path.Combine(AppContext.BaseDirectory, program)))
        {
            start.ArgumentList.Add(arg);
        }

        long began = Stopwatch.GetTimestamp();
        using Process child = Process.Start(start)!;
        Task<string> output = child.StandardOutput.ReadToEndAsync();
        Task<string> steps = child.StandardError.ReadToEndAsync();
        long peak = 0;
        while (!child.WaitForExit(20))
        {
            peak = Math.Max(peak, Peak(child.Id));
        }

        double seconds = Stopwatch.GetElapsedTime(began).TotalSeconds;
        child.WaitForExit();
        return child.ExitCode == 0
            ? new ChildProgram(seconds, peak, steps.Result, output.Result)
            : throw new InvalidOperationException($"{string.Join(' ', args)} ended with {child.ExitCode}: {steps.Result}{output.Result}");
    }

    // The system keeps the high-water mark itself, so asking now and then misses nothing but the last moment.
    private static long Peak(int id)
    {
        string path = $"/proc/{id}/status";
        try
        {
            string? line = File.Exists(path) ? File.ReadLines(path).FirstOrDefault(l => l.StartsWith("VmHWM:", StringComparison.Ordinal)) : null;
            return line is null ? 0 : long.Parse(line.AsSpan(6).Trim()[..^3], CultureInfo.InvariantCulture) / 1024;
        }
        catch (IOException)
        {
            // It ended between the two looks.
            return 0;
        }
    }
}
