using System.Globalization;
using CsCheck;

namespace PartsSignal.Tests;

/// <summary>
/// Properties held over generated values that are the same in every run; CsCheck's own <c>Sample</c> starts from the
/// clock. <c>PARTSSIGNAL_SEED</c> explores others. A failing value is written to the test's output.
/// </summary>
public static class Property
{
    private const ulong Seed = 20_261_031;
    private const int Runs = 100;

    /// <summary>Runs a check over generated values; the check fails by throwing.</summary>
    public static void ForAll<T>(this Gen<T> gen, Action<T> check, int runs = Runs)
    {
        ulong seed = ulong.TryParse(Environment.GetEnvironmentVariable("PARTSSIGNAL_SEED"), NumberStyles.None, CultureInfo.InvariantCulture, out ulong other) ? other : Seed;
        for (uint run = 0; run < runs; run++)
        {
            T value = gen.Generate(new PCG(run, seed), null, out _);
            bool held = false;
            try
            {
                check(value);
                held = true;
            }
            finally
            {
                if (!held)
                {
                    TestContext.Current.TestOutputHelper?.WriteLine($"Fails in run {run} of seed {seed} with {Check.Print(value)}");
                }
            }
        }
    }

    /// <summary>Runs a check over generated values; the check fails by answering false.</summary>
    public static void ForAll<T>(this Gen<T> gen, Func<T, bool> holds, int runs = Runs) => gen.ForAll(value => Assert.True(holds(value), $"Does not hold for {Check.Print(value)}"), runs);

    /// <inheritdoc cref="ForAll{T}(Gen{T}, Action{T}, int)"/>
    public static void ForAll<T1, T2>(this Gen<(T1, T2)> gen, Action<T1, T2> check, int runs = Runs) => gen.ForAll(t => check(t.Item1, t.Item2), runs);

    /// <inheritdoc cref="ForAll{T}(Gen{T}, Func{T, bool}, int)"/>
    public static void ForAll<T1, T2>(this Gen<(T1, T2)> gen, Func<T1, T2, bool> holds, int runs = Runs) => gen.ForAll(t => holds(t.Item1, t.Item2), runs);

    /// <inheritdoc cref="ForAll{T}(Gen{T}, Action{T}, int)"/>
    public static void ForAll<T1, T2, T3>(this Gen<(T1, T2, T3)> gen, Action<T1, T2, T3> check, int runs = Runs) => gen.ForAll(t => check(t.Item1, t.Item2, t.Item3), runs);

    /// <inheritdoc cref="ForAll{T}(Gen{T}, Func{T, bool}, int)"/>
    public static void ForAll<T1, T2, T3>(this Gen<(T1, T2, T3)> gen, Func<T1, T2, T3, bool> holds, int runs = Runs) => gen.ForAll(t => holds(t.Item1, t.Item2, t.Item3), runs);

    /// <inheritdoc cref="ForAll{T}(Gen{T}, Action{T}, int)"/>
    public static void ForAll<T1, T2, T3, T4>(this Gen<(T1, T2, T3, T4)> gen, Action<T1, T2, T3, T4> check, int runs = Runs) => gen.ForAll(t => check(t.Item1, t.Item2, t.Item3, t.Item4), runs);

    /// <inheritdoc cref="ForAll{T}(Gen{T}, Func{T, bool}, int)"/>
    public static void ForAll<T1, T2, T3, T4>(this Gen<(T1, T2, T3, T4)> gen, Func<T1, T2, T3, T4, bool> holds, int runs = Runs) => gen.ForAll(t => holds(t.Item1, t.Item2, t.Item3, t.Item4), runs);

    /// <inheritdoc cref="ForAll{T}(Gen{T}, Action{T}, int)"/>
    public static void ForAll<T1, T2, T3, T4, T5>(this Gen<(T1, T2, T3, T4, T5)> gen, Action<T1, T2, T3, T4, T5> check, int runs = Runs) => gen.ForAll(t => check(t.Item1, t.Item2, t.Item3, t.Item4, t.Item5), runs);
}
