using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Store;

namespace PartsSignal.Pipeline.Publishing;

/// <summary>The one way by which a reader sees the current store.</summary>
public static class CurrentStore
{
    /// <summary>
    /// Makes the store's tables visible. The link is followed once, so that a reader stays with one store while a load
    /// makes another current.
    /// </summary>
    /// <param name="database">The session.</param>
    /// <param name="store">Path of the current store, <c>out/store</c>; a store not yet there reads as empty tables.</param>
    public static void Attach(Database database, string store) => StoreTables.Attach(database, StoreFolders.Resolve(store));
}
