using DuckDB.NET.Data;
using DuckDB.NET.Native;
using PartsSignal.Analysis.Sql;

namespace PartsSignal.Pipeline.Core;

/// <summary>
/// Runs a step of the transform with little memory, and again with more if it runs out. Most operators spill to disk,
/// but some cannot.
/// </summary>
internal static class MemoryRetry
{
    /// <summary>Memory limits in the order tried. The program itself and untracked engine memory add about 250 MB.</summary>
    public static readonly IReadOnlyList<string> Rungs = ["320MB", "400MB", "640MB", "1280MB", "2560MB"];

    private static readonly IReadOnlyList<string> LargeWritingRungs = ["160MB", .. Rungs];

    /// <summary>
    /// Limits for exports, which need less; their write buffers are not counted by the engine. A session that holds little
    /// keeps its limit, because the engine then need not give memory back first.
    /// </summary>
    public static IReadOnlyList<string> WritingRungs(Database database) => database.HoldsLittle ? Rungs : LargeWritingRungs;

    /// <summary>Runs a step that can be restarted.</summary>
    /// <param name="database">The session.</param>
    /// <param name="rungs">Memory limits to try, in order.</param>
    /// <param name="step">The step.</param>
    /// <exception cref="DuckDBException">The last limit was too low, or the step failed for another reason.</exception>
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

        // Inside the try: what the engine already holds may exceed the new limit.
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
