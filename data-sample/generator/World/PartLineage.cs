namespace PartsSignal.SampleShop.World;

/// <summary>One number a part has carried, and from which day.</summary>
internal sealed record PartVersion(string Number, int EffectiveDay, string OwnNumberFirst, string OwnNumberSecond);

/// <summary>A part through all its numbers: fitting one or another makes no difference to the appliance.</summary>
internal sealed class PartLineage
{
    public required int Index { get; init; }

    public required string Component { get; init; }

    public required string Description { get; init; }

    public required decimal Price { get; init; }

    public required string SizeClass { get; init; }

    public required int ReturnableDays { get; init; }

    public required int WarrantyDays { get; init; }

    /// <summary>Share bought from the second supplier, 0 to 1.</summary>
    public required double SecondSupplierShare { get; init; }

    /// <summary>Oldest first; at least one.</summary>
    public required IReadOnlyList<PartVersion> Versions { get; init; }

    /// <summary>From this day the part comes as a kit and needs <see cref="KitPart"/> as well.</summary>
    public int KitDay { get; set; } = int.MaxValue;

    public PartLineage? KitPart { get; set; }

    /// <summary>From this day nobody makes it and nothing replaces it.</summary>
    public int EndDay { get; set; } = int.MaxValue;

    /// <summary>The version in force on a day.</summary>
    public int VersionOn(int day)
    {
        int at = 0;
        for (int i = 1; i < Versions.Count; i++)
        {
            if (Versions[i].EffectiveDay <= day)
            {
                at = i;
            }
        }

        return at;
    }

    public PartVersion Current => Versions[VersionOn(ShopCalendar.AsOf)];

    /// <summary>What the shop pays on a day: it drifts up by a little more than three in a hundred a year, in steps.</summary>
    public decimal PriceOn(int day, bool secondSupplier)
    {
        int steps = Math.Max(0, ShopCalendar.Year(day) - 2021);
        decimal price = Price * (1 + (0.034m * steps)) * (secondSupplier ? 0.91m : 1m);
        return Math.Round(price, 2, MidpointRounding.AwayFromZero);
    }
}
