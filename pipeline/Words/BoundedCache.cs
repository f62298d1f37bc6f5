using System.Collections.Concurrent;
using System.Diagnostics.CodeAnalysis;

namespace PartsSignal.Pipeline.Words;

/// <summary>Thread-safe cache that stops admitting entries once full; later keys are recomputed. For one thread and short texts see the parse cache of staging.</summary>
/// <param name="most">About how many keys are kept.</param>
internal sealed class BoundedCache<TKey, TValue>(int most)
    where TKey : notnull
{
    private readonly ConcurrentDictionary<TKey, TValue> _known = new();
    private int _kept;

    /// <summary>What is kept of a key.</summary>
    public bool TryGet(TKey key, [MaybeNullWhen(false)] out TValue value) => _known.TryGetValue(key, out value);

    /// <summary>Keeps a value while there is room, and returns it.</summary>
    public TValue Keep(TKey key, TValue value)
    {
        if (Volatile.Read(ref _kept) < most && _known.TryAdd(key, value))
        {
            Interlocked.Increment(ref _kept);
        }

        return value;
    }
}
