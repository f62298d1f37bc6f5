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
        database.Read("queries/prediction/family_parts.sql", r => (r.GetString(0), new FamilyPart
        {
            Component = r.GetString(1),
            PartNumber = r.GetString(2),
            Description = r.Text(3),
            TimesSeen = r.Long(4) ?? 0,
            Listed = r.Flag(5) ?? false,
            Quantity = Math.Max(1, r.Int(6)),
            Price = r.Money(7),
            ReturnableDays = (int?)r.Long(8),
            Available = r.Flag(9) ?? true,
        })),
        database.Read("queries/prediction/model_parts.sql", r => (r.GetString(0), r.GetString(1), r.GetInt64(2))),
        database.Read("results/prediction/parts_together.sql", r => new Companion(
            r.GetString(0), r.GetString(1), r.GetString(2), r.GetInt64(4), r.GetInt64(6), r.GetDouble(7), r.GetDouble(8))),
        database.Read("queries/prediction/van_parts.sql", r => new VanPart(r.GetString(0), r.GetString(1), r.Int(2), r.Day(3))),
        database.Read("queries/prediction/known_models.sql", r => new KnownModel(r.GetString(0), r.GetString(1), r.Text(2), r.Text(3))),
        risks);

    /// <summary>Risks of the next year that are known.</summary>
    /// <param name="database">A session with the table <c>next_year_risk</c>.</param>
    public static IReadOnlyList<YearRisk> Risks(Database database) => database.Read("queries/prediction/year_risks.sql", r => new YearRisk(
        r.GetString(0), r.GetString(1), r.GetString(2), r.GetString(3), r.Int(4), r.GetDouble(5), r.Long(6) ?? 0));
}
