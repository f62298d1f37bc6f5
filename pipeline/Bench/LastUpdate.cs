using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Planning;
using PartsSignal.Pipeline.Publishing;
using PartsSignal.Pipeline.Reporting;

namespace PartsSignal.Pipeline.Bench;

/// <summary>What pages say of the last update, read from its store and the shop's settings in one session.</summary>
internal sealed class LastUpdate : IDisposable
{
    private readonly Database? _store;
    private readonly ShopSettings? _settings;
    private readonly Lazy<DateOnly?> _lastDay;

    private readonly OutputFolder _output;

    private LastUpdate(OutputFolder output, Database? store, ShopSettings? settings)
    {
        (_output, _store, _settings) = (output, store, settings);
        _lastDay = new Lazy<DateOnly?>(() => store is null || settings is null ? null : ReportMaker.LastDay(store, settings));
    }

    private sealed record Count(string Van, DateOnly? CountedOn);

    /// <summary>Last day that the figures reach, or null before the first update and while the settings have a fault.</summary>
    public DateOnly? LastDay => _lastDay.Value;

    /// <summary>Mark of the shop's currency; empty if there is none, or while the settings have a fault.</summary>
    public string Currency => _settings?.Currency ?? "";

    /// <summary>Which van jobs count for where the shop's files do not tell, or null where they do or nothing was loaded yet.</summary>
    public VanStandIn? StandIn => _store is null ? null : VanStandIn.Of(_store);

    /// <summary>How part numbers are known where jobs name parts in words, or null where they do not or nothing was loaded yet.</summary>
    public PartsInWords? Words => _store is null ? null : PartsInWords.Of(_store);

    /// <summary>Day of the newest count of each counted van; null: the count has no day.</summary>
    public IReadOnlyDictionary<string, DateOnly?> CountedOn => _store is null
        ? new Dictionary<string, DateOnly?>()
        : _store.Read<Count>("queries/van_plan/van_counted_on.sql").ToDictionary(c => c.Van, c => c.CountedOn, StringComparer.Ordinal);

    /// <summary>The settings' vans as the store calls them.</summary>
    public IReadOnlyList<string> ListedVans => _store is null || _settings is null ? [] : [.. StoredVans.Name(_settings, _output, _store).Vans.Select(v => v.Van)];

    /// <summary>Technicians as the job log names them, the one with most jobs first.</summary>
    public IReadOnlyList<string> Technicians => _store is null ? [] : _store.Read<string>("queries/van_plan/technicians.sql");

    /// <summary>Calls that wait for their first visit on the last day.</summary>
    public IReadOnlyList<BookedCall> NotVisited => _store is not null && LastDay is { } day ? BookedJobs.NotVisited(BookedCalls.Read(_store), day) : [];

    /// <summary>Opens the session; before the first update it tells nothing but the settings.</summary>
    public static LastUpdate Open(ShopFolder shop) =>
        new(shop.Output, Directory.Exists(shop.Output.Store) ? CurrentStore.Open(shop.Output) : null, Settings(shop));

    /// <inheritdoc/>
    public void Dispose() => _store?.Dispose();

    // Settings with a fault are told on their own page, where they can be mended.
    private static ShopSettings? Settings(ShopFolder shop)
    {
        try
        {
            return ShopFile.Load(shop.Files);
        }
        catch (BadInputException)
        {
            return null;
        }
    }
}
