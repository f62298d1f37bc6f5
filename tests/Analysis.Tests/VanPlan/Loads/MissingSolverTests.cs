using System.Reflection;
using System.Runtime.InteropServices;
using System.Runtime.Loader;
using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.Tests.VanPlan.Loads;

/// <summary>
/// Loads the planner and the solver's managed half once more, where the native half cannot be found, and plans there.
/// </summary>
public sealed class MissingSolverTests
{
    [Fact]
    public void Plan_NativeLibraryMissing_ManagedSearchPlansAndSaysSo()
    {
        int missing = 0;
        for (int seed = 0; seed < 40; seed++)
        {
            (int[] load, double value, double bound, bool saysSo) = PlanWithoutLibrary(seed);
            SmallTours tours = SmallTours.Random(seed);
            double best = tours.Enumerate(PartsSignal.Analysis.VanPlan.Replay.ConsumeRule.TakeWhatIsThere).Best;
            Assert.Equal(tours.Problem().Value(load), value, 9);
            Assert.True(value >= 0.99 * best && bound >= best - 1e-9, $"seed {seed}: {value} and {bound} for {best}");
            missing += saysSo ? 1 : 0;
        }

        Assert.True(missing > 0, "No instance wanted the integer program.");
    }

    [Fact]
    public void Plan_NativeLibraryThere_IsNotSaidToBeMissing()
    {
        for (int seed = 0; seed < 40; seed++)
        {
            Assert.False(VanLoadPlanner.Plan(SmallTours.Random(seed).Problem(), LoadEffort.Thorough).SolverMissing);
        }
    }

    /// <summary>Called in the other load context.</summary>
    internal static object[] PlanHere(int seed)
    {
        VanLoad plan = VanLoadPlanner.Plan(SmallTours.Random(seed).Problem(), LoadEffort.Thorough with { GoodEnough = 1e-6, Branches = 4000 });
        return [plan.Quantities.ToArray(), plan.Value, plan.Bound, plan.SolverMissing];
    }

    private static (int[] Pieces, double Value, double Bound, bool SaysSo) PlanWithoutLibrary(int seed)
    {
        Type there = Elsewhere.Value.LoadFromAssemblyName(typeof(MissingSolverTests).Assembly.GetName()).GetType(typeof(MissingSolverTests).FullName!)!;
        Assert.NotSame(typeof(MissingSolverTests), there);
        var plan = (object[])there.GetMethod(nameof(PlanHere), BindingFlags.NonPublic | BindingFlags.Static)!.Invoke(null, [seed])!;
        return ((int[])plan[0], (double)plan[1], (double)plan[2], (bool)plan[3]);
    }

    private static readonly Lazy<WithoutLibrary> Elsewhere = new(() => new WithoutLibrary());

    private sealed class WithoutLibrary : AssemblyLoadContext
    {
        private static readonly string[] Own = ["PartsSignal.Analysis", "PartsSignal.Analysis.Tests", "Google.OrTools"];

        protected override Assembly? Load(AssemblyName assemblyName)
        {
            if (!Own.Contains(assemblyName.Name))
            {
                return null;
            }

            Assembly loaded = LoadFromAssemblyPath(Path.Combine(AppContext.BaseDirectory, assemblyName.Name + ".dll"));
            if (assemblyName.Name == "Google.OrTools")
            {
                NativeLibrary.SetDllImportResolver(loaded, (name, _, _) => throw new DllNotFoundException($"{name} is away for this test."));
            }

            return loaded;
        }
    }
}
