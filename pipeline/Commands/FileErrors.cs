using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Running;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Files that a load went on without, said aloud.</summary>
internal static class FileErrors
{
    /// <summary>Names each on stderr.</summary>
    /// <returns>The exit code that says whether there were any.</returns>
    public static int Tell(LoadReport report, ProgramIo io)
    {
        foreach (string refusal in report.Refusals)
        {
            io.Error.WriteLine(refusal);
        }

        return report.Refusals.Count == 0 ? ExitCode.Done : ExitCode.BadInput;
    }
}
