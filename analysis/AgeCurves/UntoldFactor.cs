using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.AgeCurves;

/// <summary>
/// How much more often a component fails than the jobs that tell their machine show. Jobs that do not tell it are assumed to
/// spread over ages and families like those that do (missing at random: Rubin 1976), so that one factor raises the rate of failure
/// at every age. Whether they are on the machines in question is not known, so that limits run from none of them to all of
/// them (Horowitz and Manski 2000).
/// </summary>
/// <param name="Expected">Factor with the number expected: 1 + expected / told; 1 or more.</param>
/// <param name="Most">Factor with all that may be: 1 + untold / told; at least <paramref name="Expected"/>.</param>
internal sealed record UntoldFactor(double Expected, double Most)
{
    /// <summary>Nothing is untold.</summary>
    public static readonly UntoldFactor None = new(1, 1);

    /// <summary>From counts of failures.</summary>
    public static UntoldFactor Of(long told, long untold, double expected) =>
        told == 0 ? None : new(1 + (expected / told), 1 + (untold / (double)told));
}

/// <summary>The factors by basis, appliance type and component, from register_untold and seen_untold.</summary>
internal sealed class UntoldFactors
{
    private readonly Dictionary<(string Basis, string Type, string Component), UntoldFactor> _components;
    private readonly Dictionary<string, UntoldFactor> _registers;

    private UntoldFactors(IReadOnlyList<OnRegister> listed, IReadOnlyList<Seen> seen)
    {
        _components = listed.Select(r => (Key: (CurveBasis.Register, r.ApplianceType, r.Component), Factor: UntoldFactor.Of(r.Listed, r.Untold, r.Expected)))
            .Concat(seen.Where(r => r.SubjectKind == "component")
                .Select(r => (Key: (CurveBasis.UnitsSeen, r.ApplianceType, r.Subject), Factor: UntoldFactor.Of(r.Told, r.Untold, r.Expected))))
            .ToDictionary(f => f.Key, f => f.Factor);
        _registers = listed.GroupBy(r => r.ApplianceType).ToDictionary(
            g => g.Key, g => UntoldFactor.Of(g.Sum(r => r.Listed), g.Sum(r => r.Untold), g.Sum(r => r.Expected)), StringComparer.Ordinal);
    }

    /// <summary>Reads them; where they were not counted, nothing is untold.</summary>
    public static UntoldFactors Read(Database database) => new(
        database.Has("register_untold") ? database.ReadTable<OnRegister>("register_untold") : [],
        database.Has("seen_untold") ? database.ReadTable<Seen>("seen_untold") : []);

    /// <summary>Factor of one component.</summary>
    public UntoldFactor Of(string basis, string type, string component) => _components.GetValueOrDefault((basis, type, component), UntoldFactor.None);

    /// <summary>Factor of all components of a type on the register together.</summary>
    public UntoldFactor OfRegister(string type) => _registers.GetValueOrDefault(type, UntoldFactor.None);

    private sealed record OnRegister(string ApplianceType, string Component, long Listed, long Untold, double Expected);

    private sealed record Seen(string ApplianceType, string SubjectKind, string Subject, long Told, long Untold, double Expected);
}
