using PartsSignal.Analysis.CheckOrder;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics.Intervals;

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
        risks)
    {
        Languages = database.Read<string>("queries/prediction/languages.sql"),
        OwnWords = database.Read<OwnComplaintWords>("queries/prediction/own_words.sql"),
    };

    /// <summary>Risks of the next year that are known.</summary>
    /// <param name="database">A session with the table <c>next_year_risk</c>.</param>
    public static IReadOnlyList<YearRisk> Risks(Database database) => database.Read<YearRisk>("queries/prediction/year_risks.sql");

    private sealed record FamilyPartRow(string ModelFamily, FamilyPart Part);

    private sealed record ModelPartRow(string ModelNumber, string PartNumber, long Jobs);
}

/// <summary>What answers take from a store and the results of its run, as rows.</summary>
/// <param name="Parts">Parts that fit a family, family by family, the most used first.</param>
/// <param name="ModelParts">Jobs on the very model that used a part.</param>
/// <param name="Companions">What is fitted together.</param>
/// <param name="Vans">What vans hold.</param>
/// <param name="Models">The model list.</param>
/// <param name="Risks">Risks of the next year.</param>
public sealed record StoreFacts(
    IReadOnlyList<(string Family, FamilyPart Part)> Parts,
    IReadOnlyList<(string Model, string Part, long Jobs)> ModelParts,
    IReadOnlyList<Companion> Companions,
    IReadOnlyList<VanPart> Vans,
    IReadOnlyList<KnownModel> Models,
    IReadOnlyList<YearRisk> Risks)
{
    /// <summary>Languages of the job logs; empty: not known.</summary>
    public IReadOnlyList<string> Languages { get; init; } = [];

    /// <summary>Frequent phrases of the shop's own that became complaint kinds.</summary>
    public IReadOnlyList<OwnComplaintWords> OwnWords { get; init; } = [];
}

/// <summary>A phrase of the shop's complaints and the kind that it means.</summary>
public sealed record OwnComplaintWords(string ComplaintKind, string Words);

/// <summary>A current part that fits a family.</summary>
public sealed record FamilyPart
{
    /// <summary>Current part number: whatever older number the family was listed with leads here.</summary>
    public required string PartNumber { get; init; }

    /// <summary>Component it is.</summary>
    public required string Component { get; init; }

    /// <summary>Description, or null if there is none.</summary>
    public string? Description { get; init; }

    /// <summary>Times it was fitted on the family.</summary>
    public long TimesSeen { get; init; }

    /// <summary>True when a list names it for the family.</summary>
    public bool Listed { get; init; }

    /// <summary>Pieces usually needed, 1 or more.</summary>
    public int Quantity { get; init; } = 1;

    /// <summary>What the shop pays for one, or null if not known.</summary>
    public decimal? Price { get; init; }

    /// <summary>Days it can be returned within, or null if not known.</summary>
    public int? ReturnableDays { get; init; }

    /// <summary>False: no longer made and nothing replaces it.</summary>
    public bool Available { get; init; } = true;
}

/// <summary>A component that is often fitted together with another.</summary>
/// <param name="ApplianceType">Type of the appliance.</param>
/// <param name="Component">The component a job needs.</param>
/// <param name="With">What is fitted with it.</param>
/// <param name="JobsComponent">Jobs with the component.</param>
/// <param name="JobsBoth">Jobs with both.</param>
/// <param name="Share">JobsBoth over JobsComponent, 0 to 1.</param>
/// <param name="Lift">How many times more often than if the two had nothing to do with each other.</param>
public sealed record Companion(string ApplianceType, string Component, [Column("with_component")] string With, long JobsComponent, long JobsBoth, double Share, double Lift)
{
    /// <summary>Lower end of the lift's 95 % interval: that of the share (Wilson 1927), over the share all jobs have. 0: cannot be told.</summary>
    public double LiftLower => Share > 0 ? (Proportion.Wilson(JobsBoth, JobsComponent).Lower ?? 0) * Lift / Share : 0;
}

/// <summary>What a van holds of a part.</summary>
/// <param name="PartNumber">Current part number.</param>
/// <param name="Van">The van.</param>
/// <param name="OnHand">Pieces, 1 or more.</param>
/// <param name="CountedOn">Day of the count, or null if not known.</param>
public sealed record VanPart(string PartNumber, string Van, int OnHand, DateOnly? CountedOn);

/// <summary>A model of the model list.</summary>
/// <param name="ModelNumber">Its number.</param>
/// <param name="ModelFamily">Its family.</param>
/// <param name="ApplianceType">Its type, or null if not known.</param>
/// <param name="Brand">Its brand, or null if not known.</param>
public sealed record KnownModel(string ModelNumber, string ModelFamily, string? ApplianceType, string? Brand);

/// <summary>How likely a component fails within the next year, at an age.</summary>
/// <param name="Basis">register: any failure of a listed appliance; units_seen: a return to this shop.</param>
/// <param name="ApplianceType">Type of the appliance.</param>
/// <param name="ModelFamily">A family, or <c>all</c>.</param>
/// <param name="Component">The component.</param>
/// <param name="AgeYears">Age reached, whole years.</param>
/// <param name="Chance">Chance within a year, 0 to 1.</param>
/// <param name="Events">Failures near that age behind it.</param>
public sealed record YearRisk(string Basis, string ApplianceType, string ModelFamily, string Component, int AgeYears, double Chance, [Column("events_near_age")] long Events);
