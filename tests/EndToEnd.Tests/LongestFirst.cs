using PartsSignal.EndToEnd.Tests;
using PartsSignal.EndToEnd.Tests.Bench;
using PartsSignal.EndToEnd.Tests.Crashes;
using PartsSignal.EndToEnd.Tests.Privacy;
using PartsSignal.EndToEnd.Tests.UnknownShops;
using Xunit.Sdk;
using Xunit.v3;

[assembly: TestCollectionOrderer(typeof(LongestFirst))]

namespace PartsSignal.EndToEnd.Tests;

/// <summary>Starts the collections that take longest first, so that no processor waits for one of them at the end.</summary>
public sealed class LongestFirst : ITestCollectionOrderer
{
    private static readonly string[] Long =
    [
        RunSmallShopFixture.Collection, nameof(BenchWalkTests), nameof(OnePersonTests), nameof(ForgetTests), nameof(OwnerPagesTests), nameof(KilledRunTests),
        nameof(JobLogAloneTests), nameof(BenchWorkTests), nameof(UnknownShopTests), nameof(InspectAndLoadTests),
    ];

    public IReadOnlyCollection<TTestCollection> OrderTestCollections<TTestCollection>(IReadOnlyCollection<TTestCollection> testCollections)
        where TTestCollection : ITestCollection =>
        [.. testCollections.OrderBy(c => Place(c)).ThenBy(c => c.TestCollectionDisplayName, StringComparer.Ordinal)];

    private static int Place(ITestCollection collection) =>
        Array.FindIndex(Long, name => collection.TestCollectionDisplayName.Contains(name, StringComparison.Ordinal)) is >= 0 and int at ? at : Long.Length;
}
