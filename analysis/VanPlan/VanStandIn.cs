using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>Says what stands for vans where a shop names none.</summary>
public static class VanStandIn
{
    /// <summary>In one sentence, or null where vans are named or there is no job.</summary>
    /// <param name="database">A session over the store.</param>
    public static string? Sentence(Database database) => database.Read<string>("queries/van_plan/van_stand_in.sql") switch
    {
        ["technician"] => "No van is named in the files, so each technician's jobs stand for a van.",
        ["one"] => "No van and no technician is named in the files, so one van, 'shop', stands for all jobs.",
        _ => null,
    };
}
