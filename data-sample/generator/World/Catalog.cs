using System.Globalization;
using PartsSignal.SampleShop.Chance;

namespace PartsSignal.SampleShop.World;

/// <summary>The world that stays the same whatever the seed of a shop: makers, families, lives, parts.</summary>
internal sealed class Catalog
{
    private Catalog(IReadOnlyList<Brand> brands, IReadOnlyList<PartLineage> parts, IReadOnlyList<ModelFamily> families)
    {
        Brands = brands;
        Parts = parts;
        Families = families;
        FamiliesByType = families.GroupBy(f => f.Type).ToDictionary(g => g.Key, g => (IReadOnlyList<ModelFamily>)[.. g]);
    }

    public static Catalog World { get; } = Make();

    public IReadOnlyList<Brand> Brands { get; }

    public IReadOnlyList<PartLineage> Parts { get; }

    public IReadOnlyList<ModelFamily> Families { get; }

    public IReadOnlyDictionary<string, IReadOnlyList<ModelFamily>> FamiliesByType { get; }

    private static Catalog Make()
    {
        IReadOnlyList<Brand> brands = Brand.ReadAll();
        IReadOnlyList<PartLineage> parts = new PartMaker().MakeAll();
        ILookup<string, PartLineage> pools = parts.ToLookup(p => p.Component);
        IReadOnlyDictionary<string, IReadOnlyList<Cause>> causes = Cause.ReadByType();
        DataTable table = DataTable.Read("families");
        var families = new List<ModelFamily>();
        foreach (string[] row in table.Rows)
        {
            Dice dice = Dice.For(11, "family", families.Count);
            Brand brand = brands.Single(b => b.Name == table.Text(row, "brand"));
            string type = table.Text(row, "type");
            string series = table.Text(row, "series");
            string generation = table.Text(row, "generation");
            int launch = ShopCalendar.Month(table.Text(row, "launch"));
            int stop = ShopCalendar.Month(table.Text(row, "stop"));
            IEnumerable<Cause> own = causes[type].Where(c => c.Generation == "any" || c.Generation == generation);
            families.Add(new ModelFamily(
                families.Count,
                $"{brand.Name[..2].ToUpperInvariant()}-{series}",
                brand,
                type,
                generation,
                launch,
                stop,
                table.Number(row, "popularity"),
                MakeModels(brand.Name, series, launch, stop, dice),
                [.. own.Select(c => MakeCause(c, brand, type, generation, pools, dice))]));
        }

        return new Catalog(brands, parts, families);
    }

    private static FamilyCause MakeCause(Cause cause, Brand brand, string type, string generation, ILookup<string, PartLineage> pools, Dice dice)
    {
        double scale = dice.LogNormal(cause.ScaleYears, cause.FamilySpread);
        return new FamilyCause(
            cause,
            scale,
            cause.NeedsPart ? Choose(cause.Component) : null,
            [.. cause.Extras.Select(e => (Choose(e.Name), e.Share))]);

        // a maker keeps to its own part for a type and a generation, and now and then buys another's
        PartLineage Choose(string component)
        {
            PartLineage[] pool = [.. pools[component]];
            int own = Dice.For(13, brand.Name + type + generation + component).Below(pool.Length);
            return pool[dice.Chance(0.7) ? own : dice.Below(pool.Length)];
        }
    }

    private static List<Model> MakeModels(string brand, string series, int launch, int stop, Dice dice)
    {
        var models = new List<Model>();
        int bases = dice.Between(1, 4);
        var used = new HashSet<int>();
        for (int b = 0; b < bases; b++)
        {
            int digits = dice.Between(100, 999) * 10;
            while (!used.Add(digits))
            {
                digits += 10;
            }

            int first = launch + (b == 0 ? 0 : dice.Below(Math.Max(1, (stop - launch) / 3)));
            int last = b == bases - 1 ? stop : stop - dice.Below(Math.Max(1, (stop - launch) / 4));
            bool revised = bases == 1 || dice.Chance(0.7);
            int change = revised ? first + ((last - first) * dice.Between(30, 70) / 100) : last;
            models.Add(new Model(Number(brand, series, digits, 1), first, change));
            if (revised && change < last)
            {
                models.Add(new Model(Number(brand, series, digits, 2), change + 1, last));
            }
        }

        return models;
    }

    private static string Number(string brand, string series, int digits, int revision)
    {
        string four = digits.ToString(CultureInfo.InvariantCulture);
        char letter = (char)('@' + revision);
        return brand switch
        {
            "Velquora" => $"{series}{four}-{letter}",
            "Ombrelin" => $"{series}{four}/0{revision}",
            "Quenvik" => $"{series} {four[..3]} {letter}",
            "Praxolle" => $"{series}-{four[..3]}.{revision}",
            "Ulvabrek" => $"{series}{four[..3]}{letter}",
            "Tesselmar" => $"{series}{four}-0{revision}",
            "Zumarre" => $"{series}10-{four[..3]}{letter}",
            _ => $"{series}{four}/{revision}",
        };
    }
}
