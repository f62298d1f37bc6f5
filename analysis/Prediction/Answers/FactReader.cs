using PartsSignal.Analysis.CheckOrder;
using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.Prediction.Answers;

/// <summary>Reads from a store what answers are put together from.</summary>
public static class FactReader
{
    /// <summary>Reads the facts.</summary>
    /// <param name="database">A session over the store.</param>
    /// <param name="checks">The shop's checks.</param>
    /// <param name="risks">Risks of the next year.</param>
    public static LookupFacts Read(Database database, CheckTable checks, IReadOnlyList<YearRisk> risks) => new(Rows(database, risks), checks);

    /// <summary>The same as rows.</summary>
    /// <param name="database">A session over the store.</param>
    /// <param name="risks">Risks of the next year.</param>
    public static StoreFacts Rows(Database database, IReadOnlyList<YearRisk> risks) => new(
        [.. database.Read<FamilyPartRow>("queries/prediction/family_parts.sql").Select(r => (r.ModelFamily, r.Part))],
        [.. database.Read<ModelPartRow>("queries/prediction/model_parts.sql").Select(r => (r.ModelNumber, r.PartNumber, r.Jobs))],
        database.Read<Companion>("results/prediction/parts_together.sql"),
        database.Read<VanPart>("queries/prediction/van_parts.sql"),
        database.Read<KnownModel>("queries/prediction/known_models.sql"),
        risks);

    /// <summary>Risks of the next year that are known.</summary>
    /// <param name="database">A session with the table <c>next_year_risk</c>.</param>
    public static IReadOnlyList<YearRisk> Risks(Database database) => database.Read<YearRisk>("queries/prediction/year_risks.sql");

    private sealed record FamilyPartRow(string ModelFamily, FamilyPart Part);

    private sealed record ModelPartRow(string ModelNumber, string PartNumber, long Jobs);
}
