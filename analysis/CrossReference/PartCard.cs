using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Intervals;

namespace PartsSignal.Analysis.CrossReference;

/// <summary>Everything the shop knows about one part number.</summary>
public sealed record PartCard
{
    /// <summary>The number as asked for.</summary>
    public required string Asked { get; init; }

    /// <summary>Catalog number it stands for.</summary>
    public required string Number { get; init; }

    /// <summary>How it was found: exact, compact, alias, confusable.</summary>
    public required string Basis { get; init; }

    /// <summary>Number to order today; of kits and alternatives the first listed.</summary>
    public required string Current { get; init; }

    /// <summary>All numbers that stand for it today, with pieces per old piece.</summary>
    public required Resolution Replacements { get; init; }

    /// <summary>The arrows it is part of, oldest first.</summary>
    public required IReadOnlyList<PartArrow> Arrows { get; init; }

    /// <summary>What the catalog says of the current number.</summary>
    public required PartFacts Facts { get; init; }

    /// <summary>Suppliers' own numbers.</summary>
    public required IReadOnlyList<PartAlias> Aliases { get; init; }

    /// <summary>Families it fits.</summary>
    public required IReadOnlyList<PartFamily> Families { get; init; }

    /// <summary>Who sold it, with lead time and returns.</summary>
    public required IReadOnlyList<PartSupply> Suppliers { get; init; }

    /// <summary>Price history by supplier and year.</summary>
    public required IReadOnlyList<PartPrice> Prices { get; init; }

    /// <summary>Share of repairs with the part after which the same component was fitted again within the early window of <c>int_early_window.sql</c>.</summary>
    public required EarlyFailure Early { get; init; }

    /// <summary>Pieces on the vans.</summary>
    public required IReadOnlyList<PartOnHand> OnHand { get; init; }
}

/// <summary>An arrow as listed.</summary>
public sealed record PartArrow([Column("old_number")] string Old, [Column("new_number")] string? New, DateOnly? EffectiveOn, string Kind, int Quantity, string SourceFile, int SourceLine);

/// <summary>Catalog facts, and how often the part was fitted.</summary>
/// <param name="KnownFrom">listed, reviewed (the owner called it a part), or seen: no list has it, order and job lines do.</param>
public sealed record PartFacts(
    string? Description, string? Component, decimal? Price, string? SizeClass, int? ReturnableDays, int? WarrantyDays, string? Supplier,
    bool Available, long Jobs, long Pieces, [Column("last_on")] DateOnly? LastFittedOn, [Column("basis")] string KnownFrom);

/// <summary>A supplier's own number.</summary>
public sealed record PartAlias(string Supplier, string Alias, [Column("part_number")] string Number, string Basis);

/// <summary>A family the part fits.</summary>
/// <param name="Basis">listed, seen (no list mentions it) or both.</param>
public sealed record PartFamily([Column("model_family")] string Family, string Basis, long TimesSeen, int TypicalQuantity, DateOnly? LastSeen);

/// <summary>A supplier of the part.</summary>
/// <param name="MedianDays">Half of the delivered lines came within so many days, or null if none was delivered.</param>
/// <param name="Days90">Nine in ten came within so many days.</param>
/// <param name="ToldPieces">Pieces on lines that tell whether they were sent back.</param>
/// <param name="Returned">Of them sent back.</param>
/// <param name="RecordsReturns">True if the supplier's orders record a return of anything.</param>
public sealed record PartSupply(
    string Supplier, long Lines, long Pieces, DateOnly FirstOn, DateOnly LastOn, decimal? LowestCost, decimal? HighestCost, decimal? LastCost,
    long Delivered, double? MedianDays, double? Days90, long ToldPieces, long Returned, bool RecordsReturns)
{
    /// <summary>Share of the pieces sent back, with Wilson's interval; unknown, not 0, where the supplier's orders record no return at all.</summary>
    public Estimate ReturnedShare =>
        !RecordsReturns ? Estimate.None("no return is recorded for this supplier")
        : ToldPieces > 0 ? Proportion.Wilson(Returned, ToldPieces)
        : Estimate.None(Pieces > 0 ? "the orders do not tell what was sent back" : "no piece was bought");
}

/// <summary>What the part cost in one year.</summary>
public sealed record PartPrice(string Supplier, int Year, long Lines, decimal LowestCost, decimal MedianCost, decimal HighestCost);

/// <summary>Early failures.</summary>
/// <param name="Days">Days after fitting that count as early.</param>
/// <param name="Followed">Jobs that fitted it on a known appliance and could be followed for the whole time.</param>
/// <param name="Failed">Of these, jobs after which the same component was needed again.</param>
public sealed record EarlyFailure(int Days, long Followed, long Failed)
{
    /// <summary>Failed of followed, with Wilson's interval.</summary>
    public Estimate Share => Followed > 0 ? Proportion.Wilson(Failed, Followed) : Estimate.None($"no fitted piece could be followed for {Days} days");
}

/// <summary>Pieces on one van.</summary>
public sealed record PartOnHand(string Van, long OnHand, DateOnly? CountedOn);
