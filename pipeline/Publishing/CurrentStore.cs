using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Store;
using PartsSignal.Pipeline.Running;

namespace PartsSignal.Pipeline.Publishing;

/// <summary>The one way by which a reader sees the current store.</summary>
public static class CurrentStore
{
    /// <summary>
    /// A session over the current store that touches nothing beyond the output folder. It has one worker: floating sums
    /// must not depend on how rows were dealt to threads.
    /// </summary>
    /// <param name="output">Folder of the store, or a draft of it.</param>
    public static Database Open(OutputFolder output)
    {
        var database = Database.Open(new DatabaseOptions { Threads = 1, Folders = [output.Kept] });
        Attach(database, output.Store);
        return database;
    }

    /// <summary>
    /// Makes the store's tables visible. The link is followed once, so that a reader stays with one store while a load
    /// makes another current.
    /// </summary>
    /// <param name="database">The session.</param>
    /// <param name="store">Path of the current store, <c>out/store</c>; a store not yet there reads as empty tables.</param>
    public static void Attach(Database database, string store) => StoreTables.Attach(database, StoreFolders.Resolve(store));
}
