using PartsSignal.Pipeline.Commands;

namespace PartsSignal.EndToEnd.Tests;

/// <summary>One call of the program, as from a shell.</summary>
internal sealed record Partssignal(int ExitCode, string Out, string Error)
{
    /// <summary>Runs a command line in this process.</summary>
    public static async Task<Partssignal> RunAsync(params string[] args)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        int code = await CommandHost.RunAsync(args, output, error, TimeProvider.System);
        return new Partssignal(code, output.ToString(), error.ToString());
    }
}
