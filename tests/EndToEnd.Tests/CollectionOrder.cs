using PartsSignal.EndToEnd.Tests;
using PartsSignal.EndToEnd.Tests.Bench;
using PartsSignal.EndToEnd.Tests.Crashes;
using PartsSignal.EndToEnd.Tests.Privacy;
using PartsSignal.EndToEnd.Tests.UnknownShops;

[assembly: TestCollectionOrderer(typeof(CollectionOrder))]

namespace PartsSignal.EndToEnd.Tests;

/// <summary>The longest collections of this project.</summary>
public sealed class CollectionOrder() : LongestFirst(
    RunSmallShopFixture.Collection, nameof(BenchWalkTests), nameof(OnePersonTests), nameof(ForgetTests), nameof(OwnerPagesTests), nameof(KilledRunTests),
    nameof(JobLogAloneTests), nameof(BenchWorkTests), nameof(UnknownShopTests), nameof(InspectAndLoadTests));
