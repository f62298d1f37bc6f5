using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>Says which van a job counts for where the shop's files do not tell.</summary>
/// <param name="Sentence">In one sentence.</param>
/// <param name="IsVan">True where what is planned are vans; false where technicians or the whole shop stand for them.</param>
public sealed record VanStandIn(string Sentence, bool IsVan)
{
    /// <summary>A van by its name: Van 2. A name that says it already stays as it is.</summary>
    /// <param name="van">Its name in the shop's files.</param>
    public static string Named(string van) => van.Contains("van", StringComparison.OrdinalIgnoreCase) ? van : "Van " + van;

    /// <summary>The heading of what is planned: a technician, or the shop as a whole, is no Van 2.</summary>
    /// <param name="van">Its name.</param>
    /// <param name="standIn">Which van jobs count for, or null where jobs name their vans.</param>
    public static string Heading(string van, VanStandIn? standIn) => standIn is { IsVan: false } ? van : Named(van);

    /// <summary>What is said of a store, or null where jobs name their vans or there is no job.</summary>
    /// <param name="database">A session over the store.</param>
    public static VanStandIn? Of(Database database) => database.Read<string>("queries/van_plan/van_stand_in.sql") switch
    {
        ["technician"] => new("Your files name no vans, so each technician is treated as one van.", false),
        ["one"] => new("Your files name no vans and no technicians, so all jobs are treated as one van, 'shop'.", false),
        ["dealt"] => new("Your job log does not say which van went to a job, so the jobs are dealt to your vans in turn. Say in the settings who drives which van.", true),
        _ => null,
    };
}
