using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>Says what stands for vans where a shop names none.</summary>
public static class VanStandIn
{
    /// <summary>In one sentence, or null where vans are named or there is no job.</summary>
    /// <param name="database">A session over the store.</param>
    public static string? Sentence(Database database) => database.Read<string>("queries/van_plan/van_stand_in.sql") switch
    {
        ["technician"] => "Your files name no vans, so each technician is treated as one van.",
        ["one"] => "Your files name no vans and no technicians, so all jobs are treated as one van, 'shop'.",
        _ => null,
    };
}
