using PartsSignal.Pipeline.Tests;
using PartsSignal.Pipeline.Tests.DateCodes;
using PartsSignal.Pipeline.Tests.Staging;
using PartsSignal.Pipeline.Tests.Transform;
using PartsSignal.Pipeline.Tests.Understanding;

[assembly: TestCollectionOrderer(typeof(CollectionOrder))]

namespace PartsSignal.Pipeline.Tests;

/// <summary>The longest collections of this project.</summary>
public sealed class CollectionOrder() : LongestFirst(
    nameof(ShopLinksTests), nameof(ModelAndAgeTests), nameof(OwnComponentsTests), nameof(SheetMapsTests), nameof(JobKeyTests), nameof(NumberResolutionTests),
    nameof(JobFactsTests), nameof(DateCodeTruthTests), nameof(LearnedDateCodesTests), nameof(IntermediateChecksTests), nameof(OwnFamiliesTests));
