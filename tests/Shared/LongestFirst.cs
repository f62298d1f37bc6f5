using Xunit.Sdk;
using Xunit.v3;

namespace PartsSignal.Tests;

/// <summary>Starts the collections that take longest first, so that no processor waits for one of them at the end.</summary>
/// <param name="longest">Their names, or those of their classes, the longest first.</param>
public abstract class LongestFirst(params string[] longest) : ITestCollectionOrderer
{
    public IReadOnlyCollection<TTestCollection> OrderTestCollections<TTestCollection>(IReadOnlyCollection<TTestCollection> testCollections)
        where TTestCollection : ITestCollection =>
        [.. testCollections.OrderBy(c => Place(c)).ThenBy(c => c.TestCollectionDisplayName, StringComparer.Ordinal)];

    private int Place(ITestCollection collection) =>
        Array.FindIndex(longest, name => collection.TestCollectionDisplayName.Contains(name, StringComparison.Ordinal)) is >= 0 and int at ? at : longest.Length;
}
