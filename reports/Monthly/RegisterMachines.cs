using PartsSignal.Analysis.Sql;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>Whose machines a figure speaks of. Contract machines are used harder, so theirs never stand for households.</summary>
/// <param name="Machines">Machines on the register.</param>
/// <param name="TypeUnknown">Those of unknown appliance type: they are in no rate of a type.</param>
/// <param name="Whose">contract, household, mixed, unknown or none.</param>
/// <param name="LogWhose">Whose failures the curves of the log alone rest on: household or unknown.</param>
internal sealed record RegisterMachines(long Machines, long TypeUnknown, string Whose, string LogWhose)
{
    /// <summary>True where contract and household machines are mixed, so that no one figure speaks for either.</summary>
    public bool IsMixed => Whose == "mixed";

    /// <summary>For example: the listed contract machines.</summary>
    public string Name => Whose is "contract" or "household" ? $"the listed {Whose} machines" : "the listed machines";

    /// <summary>What to do where kinds are mixed, in one sentence.</summary>
    public const string OneKind = "To see them, keep a list with one kind of machine only.";

    /// <summary>A sentence that says for whom the figures hold and what is left out.</summary>
    public string Scope => Whose switch
    {
        "contract" => "As far as your log shows, these machines belong to contract customers and get heavier use. Do not use the figures for households.",
        "household" => "As far as your log shows, these are household machines.",
        "mixed" => "Your register mixes contract and household machines, which are used differently, so one figure for both would mislead.",
        _ => "Whose machines these are is unknown: your log does not tell contract customers from households.",
    } + (TypeUnknown > 0 ? $" Of {Format.Count(Machines)} machines on the register, {Format.Count(TypeUnknown)} are of unknown type and are left out of these figures." : "");

    /// <summary>Reads whose machines they are; unknown where that was not computed.</summary>
    public static RegisterMachines Read(Database database) =>
        (database.Has("register_machines") ? database.ReadTable<RegisterMachines>("register_machines").FirstOrDefault() : null)
        ?? new RegisterMachines(0, 0, "unknown", "unknown");
}
