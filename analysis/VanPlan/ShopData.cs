using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>What the store knows that a van plan needs.</summary>
public sealed record ShopData
{
    /// <summary>Last day the data speaks for.</summary>
    public required DateOnly AsOf { get; init; }

    /// <summary>Jobs in the order they came.</summary>
    public IReadOnlyList<ShopJob> Jobs { get; init; } = [];

    /// <summary>When each part was last fitted. Unlike <see cref="Jobs"/>, from all visits of all vans.</summary>
    public IReadOnlyList<ShopLastUse> LastUses { get; init; } = [];

    /// <summary>Catalog numbers.</summary>
    public IReadOnlyList<ShopPart> Parts { get; init; } = [];

    /// <summary>Order lines in the order they were placed.</summary>
    public IReadOnlyList<ShopOrder> Orders { get; init; } = [];

    /// <summary>What was counted on the vans.</summary>
    public IReadOnlyList<ShopCount> Counts { get; init; } = [];

    /// <summary>What was counted on the shop's shelf; empty: it was not counted.</summary>
    public IReadOnlyList<ShelfPart> Shelf { get; init; } = [];

    /// <summary>Suppliers' own numbers.</summary>
    public IReadOnlyList<ShopAlias> Aliases { get; init; } = [];

    /// <summary>Families and parts that a list says fit each other.</summary>
    public IReadOnlyList<ShopFit> Fits { get; init; } = [];

    /// <summary>Numbers no longer made.</summary>
    internal IReadOnlyList<EndedPart> Ended { get; init; } = [];

    /// <summary>Old number to the one that stands for it by the arrows known on a day; numbers without an arrow are not in it.</summary>
    public required Func<DateOnly, IReadOnlyDictionary<string, string>> NumbersOn { get; init; }
}

/// <summary>A settled job as the demand model sees it.</summary>
/// <param name="Van">Index of the van; -1: unknown, counts for the shop only.</param>
/// <param name="Day">Day of the call.</param>
/// <param name="Type">Index of the appliance type; -1: unknown.</param>
/// <param name="Family">Index of the model family; -1: unknown.</param>
/// <param name="Needs">Parts it needed, each part once; empty: none.</param>
public sealed record PastJob(int Van, DateOnly Day, int Type, int Family, IReadOnlyList<PartNeed> Needs);
