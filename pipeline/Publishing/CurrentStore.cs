using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Publishing;

/// <summary>The one way by which a reader sees the current store.</summary>
internal static class CurrentStore
{
    private const long LeastWriterMegabytes = 1536;
    private const double WriterShare = 0.4;

    /// <summary>
    /// A session over the current store that touches nothing beyond the output folder. It has one worker: floating sums
    /// must not depend on how rows were dealt to threads.
    /// </summary>
    /// <param name="output">Folder of the store, or a draft of it.</param>
    public static Database Open(OutputFolder output) => Open(output, new DatabaseOptions());

    /// <summary>
    /// The same for a command that writes and so has the folder to itself: what its tables take beyond the memory it is
    /// given goes to the folder's spill, so that it runs over more jobs than memory holds. Some queries hold what cannot
    /// be spilled, so it is given four tenths of the machine's memory, or of what the program was allowed.
    /// </summary>
    /// <param name="output">Folder of the store, or a draft of it.</param>
    public static Database OpenToWrite(OutputFolder output) =>
        Open(output, new DatabaseOptions { MemoryLimit = $"{Math.Max(LeastWriterMegabytes, (long)(WriterShare * (GC.GetGCMemoryInfo().TotalAvailableMemoryBytes >> 20)))}MB", SpillFolder = Directory.CreateDirectory(output.Spill).FullName });

    private static Database Open(OutputFolder output, DatabaseOptions options)
    {
        var database = Database.Open(options with { Threads = 1, Folders = [output.Kept] });
        Attach(database, output.Store);
        return database;
    }

    /// <summary>
    /// Makes the store's tables visible. The link is followed once, so that a reader stays with one store while a load
    /// makes another current.
    /// </summary>
    /// <param name="database">The session.</param>
    /// <param name="store">Path of the current store, <c>out/store</c>; a store not yet there reads as empty tables.</param>
    public static void Attach(Database database, string store) => StoreTables.Attach(database, StoreSwap.Resolve(store));
}
