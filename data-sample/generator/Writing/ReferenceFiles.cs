using PartsSignal.SampleShop.Chance;
using PartsSignal.SampleShop.Simulation;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Writing;

/// <summary>The lists that do not come from jobs: prices, supersessions, suppliers' numbers, models, listed fitments, serial rules.</summary>
internal static class ReferenceFiles
{
    public const string FirstPrices = "price-list-haldorvane.csv";
    public const string SecondPrices = "price-list-brixomere.csv";
    public const string Supersessions = "superseded.csv";
    public const string Aliases = "supplier-numbers.csv";
    public const string Models = "models.csv";
    public const string Fitments = "fits.csv";
    public const string SerialCodes = "serial-codes.csv";

    public static void Write(string folder)
    {
        Catalog world = Catalog.World;
        WritePrices(folder, world);
        WriteSupersessions(folder, world);
        WriteAliases(folder, world);
        WriteModels(folder, world);
        WriteFitments(folder, world);
        WriteSerialCodes(folder, world);
    }

    private static void WritePrices(string folder, Catalog world)
    {
        using var first = new DelimitedFile(folder, FirstPrices, ',', DelimitedFile.Utf8);
        using var second = new DelimitedFile(folder, SecondPrices, ';', DelimitedFile.Windows);
        first.Row("Part number", "Description", "Group", "Net price", "Size", "Return days", "Warranty days");
        second.Note("Brixomere price list, valid from 01.09.2026");
        second.Note("");
        second.Row("Mfr part", "Item", "Net", "Size", "Returnable within", "Warranty");
        Dice dice = Dice.For(17, "prices");
        foreach (PartLineage part in world.Parts)
        {
            for (int v = 0; v < part.Versions.Count; v++)
            {
                // old numbers drop off the lists after some years, but not all of them
                bool current = part.Versions[v] == part.Current;
                if (!current && dice.Chance(0.45))
                {
                    continue;
                }

                string[] terms = [part.SizeClass, JobRow.Text(part.ReturnableDays), JobRow.Text(part.WarrantyDays)];
                if (part.SecondSupplierShare < 1)
                {
                    string group = dice.Chance(0.9) ? part.Component : "";
                    first.Row([part.Versions[v].Number, part.Description, group, JobRow.Money(part.PriceOn(ShopCalendar.AsOf, false), false), .. terms]);
                }
                else
                {
                    second.Row([part.Versions[v].Number, part.Description, JobRow.Money(part.PriceOn(ShopCalendar.AsOf, true), true), .. terms]);
                }
            }
        }
    }

    private static void WriteSupersessions(string folder, Catalog world)
    {
        using var file = new DelimitedFile(folder, Supersessions, ',', DelimitedFile.Utf8);
        file.Row("Old number", "New number", "From", "How", "Count");
        int alternatives = 0;
        foreach (PartLineage part in world.Parts)
        {
            for (int v = 1; v < part.Versions.Count; v++)
            {
                PartVersion old = part.Versions[v - 1];
                string day = JobRow.DayText(part.Versions[v].EffectiveDay, "yyyy-MM-dd");
                bool kit = part.Versions[v].EffectiveDay == part.KitDay && part.KitPart is not null;
                file.Row(old.Number, part.Versions[v].Number, day, kit ? "kit" : "replaced by", "1");
                if (kit)
                {
                    PartLineage with = part.KitPart!;
                    file.Row(old.Number, with.Versions[with.VersionOn(part.KitDay)].Number, day, "kit", "1");
                }
            }

            if (part.EndDay < ShopCalendar.AsOf)
            {
                file.Row(part.Current.Number, "", JobRow.DayText(part.EndDay, "yyyy-MM-dd"), "no longer made", "1");
            }

            if (alternatives < 6 && part.Versions.Count > 1 && part.Component is "thermostat" or "door_switch" && part.Index % 3 == 0)
            {
                PartLineage other = world.Parts.First(p => p.Component == part.Component && p != part);
                file.Row(part.Versions[0].Number, other.Current.Number, "", "also fits", "1");
                alternatives++;
            }
        }
    }

    private static void WriteAliases(string folder, Catalog world)
    {
        using var file = new DelimitedFile(folder, Aliases, ',', DelimitedFile.Utf8);
        file.Row("Supplier", "Their number", "Part number");
        Dice dice = Dice.For(19, "aliases");
        foreach (PartVersion version in world.Parts.SelectMany(p => p.Versions))
        {
            if (dice.Chance(0.93))
            {
                file.Row(Supplier.First, version.OwnNumberFirst, version.Number);
            }

            if (dice.Chance(0.90))
            {
                file.Row(Supplier.Second, version.OwnNumberSecond, version.Number);
            }
        }
    }

    private static void WriteModels(string folder, Catalog world)
    {
        using var file = new DelimitedFile(folder, Models, ',', DelimitedFile.Utf8);
        file.Row("Brand", "Model number", "Family", "Product", "First built", "Last built");
        foreach (ModelFamily family in world.Families)
        {
            foreach (Model model in family.Models)
            {
                int last = Math.Min(model.LastMonth, ShopCalendar.MonthIndex(ShopCalendar.AsOf));
                file.Row(
                    family.Brand.Name,
                    model.Number,
                    family.Code,
                    family.Type,
                    JobRow.DayText(ShopCalendar.MonthStart(model.FirstMonth), "yyyy-MM-dd"),
                    model.LastMonth > last ? "" : JobRow.DayText(ShopCalendar.MonthStart(last + 1) - 1, "yyyy-MM-dd"));
            }
        }
    }

    private static void WriteFitments(string folder, Catalog world)
    {
        using var file = new DelimitedFile(folder, Fitments, ',', DelimitedFile.Utf8);
        file.Row("Family", "Part number", "Pieces");
        Dice dice = Dice.For(23, "fits");
        foreach (ModelFamily family in world.Families)
        {
            foreach (PartLineage part in family.Causes.Where(c => c.Part is not null).Select(c => c.Part!).Distinct())
            {
                if (dice.Chance(0.7))
                {
                    file.Row(family.Code, part.Current.Number, "1");
                }
            }
        }
    }

    private static void WriteSerialCodes(string folder, Catalog world)
    {
        using var file = new DelimitedFile(folder, SerialCodes, ',', DelimitedFile.Utf8);
        file.Row("brand", "pattern", "year_letters", "year_of_first", "cycle_years", "month_letters", "weeks");
        foreach (Brand brand in world.Brands.Where(b => b.Serial.TellsDate))
        {
            SerialRule rule = brand.Serial;
            file.Row(
                brand.Name,
                rule.Pattern,
                rule.YearLetters,
                rule.CycleYears == 0 ? "" : JobRow.Text(rule.YearOfFirst),
                rule.CycleYears == 0 ? "" : JobRow.Text(rule.CycleYears),
                rule.MonthLetters,
                rule.CountsWeeks ? "january" : "");
        }
    }
}
