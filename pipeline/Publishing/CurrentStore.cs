using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Publishing;

/// <summary>Opens the current store; all readers go through here.</summary>
internal static class CurrentStore
{
    private const long LeastWriterMegabytes = 1536;
    private const double WriterShare = 0.4;

    /// <summary>
    /// Opens a session over the current store that can access only the output folder. It is single-threaded, because
    /// floating-point sums must not depend on how rows are split between threads.
    /// </summary>
    /// <param name="output">Folder of the store, or a draft of it.</param>
    public static Database Open(OutputFolder output) => Open(output, new DatabaseOptions());

    /// <summary>
    /// The same for a command that writes and so holds the folder's lock: tables beyond the memory limit spill to disk,
    /// so that it can process more jobs than fit in memory. Some operators cannot spill, so the limit is four tenths of
    /// the memory available to the process.
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
    /// Attaches the store's tables. The link is resolved once, so that a reader keeps one store while a load swaps in
    /// another.
    /// </summary>
    /// <param name="database">The session.</param>
    /// <param name="store">Path of the current store, <c>out/store</c>; a missing store reads as empty tables.</param>
    public static void Attach(Database database, string store) => StoreTables.Attach(database, StoreSwap.Resolve(store));
}
