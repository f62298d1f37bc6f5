using DuckDB.NET.Data;
using DuckDB.NET.Native;
using PartsSignal.Analysis.Sql;

namespace PartsSignal.Pipeline.Core;

/// <summary>
/// Memory for one step of the combining: little at first, more only for a step that cannot do with it. Most steps spill
/// what does not fit; some hold what cannot be spilled.
/// </summary>
internal static class MemoryRetry
{
    /// <summary>Limits in the order they are tried. Beside them stand the program and what the engine does not count, some 250 MB.</summary>
    public static readonly IReadOnlyList<string> Rungs = ["320MB", "400MB", "640MB", "1280MB", "2560MB"];

    /// <summary>The same for what is only written out: it needs less, and what is being written stands in memory beside what the engine counts.</summary>
    public static readonly IReadOnlyList<string> WritingRungs = ["160MB", .. Rungs];

    /// <summary>Runs a step that can be begun again.</summary>
    /// <param name="database">The session.</param>
    /// <param name="rungs">Limits to try.</param>
    /// <param name="step">The step.</param>
    /// <exception cref="DuckDBException">The last limit was too low, or anything else went wrong.</exception>
    public static void Run(Database database, IReadOnlyList<string> rungs, Action step)
    {
        foreach (string rung in rungs.SkipLast(1))
        {
            if (Fits(() => Within(rung)))
            {
                return;
            }
        }

        Within(rungs[^1]);

        // What the engine holds already may not fit either.
        void Within(string limit)
        {
            database.LimitMemory(limit);
            step();
        }
    }

    private static bool Fits(Action step)
    {
        try
        {
            step();
            return true;
        }
        catch (DuckDBException full) when (full.ErrorType == DuckDBErrorType.OutOfMemory)
        {
            return false;
        }
    }
}
