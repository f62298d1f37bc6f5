using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Tests.Fixtures;
using PartsSignal.Analysis.VanPlan;

namespace PartsSignal.Analysis.Tests.VanPlan;

/// <summary>
/// A shop that names parts in words. Family WX takes pump P1; family DR takes pump P2, and seals S1 and S2. Two pumps and a
/// seal were fitted on WX and DR, none with a number.
/// </summary>
public sealed class PartsInWordsTests
{
    private static readonly DateOnly Day = new(2026, 6, 1);

    [Fact]
    public void Words_OnlyOnePartOfTheComponentFits_IsThatPart()
    {
        using Database database = Shop(fits: true);
        ShopData data = ShopDataReader.Read(database, Day)!;
        Assert.Equal(["J1 P1 P1 2", "J2 P2 P2 1", "J3 - - 1", "J4 - - 1"], Lines(data));
        Assert.Equal(["P1", "P2", "S1", "S2"], data.Parts.Select(p => p.Number));
        Assert.Equal(["P1", "P2"], data.LastUses.Select(u => u.PartNumber));
        Assert.Equal("2 of 4 part lines name the part in words. Their part numbers come from your lists, which have exactly one such part for the model.", PartsInWords.Of(database)?.Sentence);
    }

    // J3: two seals fit. J4: the number is typed, and no list has it; it is not the pump that the list names.
    [Fact]
    public void Words_NoListSaysWhatFits_StandForThePartOfTheFamily()
    {
        using Database database = Shop(fits: false);
        ShopData data = ShopDataReader.Read(database, Day)!;
        Assert.Equal(["J1 WX drain pump WX drain pump 2", "J2 DR drain pump DR drain pump 1", "J3 DR door seal DR door seal 1", "J4 - - 1"], Lines(data));
        ShopPart[] named = [.. data.Parts.Where(p => p.Number.Contains(' '))];

        // Pumps cost 40 and 60; both seals cost 25.
        Assert.Equal([("DR door seal", 25m, 3.0), ("DR drain pump", null, 1.0), ("WX drain pump", null, 1.0)], named.Select(p => (p.Number, p.Price, p.Space)));
        Assert.All(named, p => Assert.Equal("find the number by model", p.Description));
        Assert.Contains("find the number for the model before you order", PartsInWords.Of(database)!.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Words_SomeLineHasANumber_StandForNothing()
    {
        using Database database = Shop(fits: false);
        database.Execute("insert into job_parts by name select 'J5' as job_id, 1 as line, 'P1' as part_raw, 'P1' as part_number, 'exact' as part_basis, 'P1' as fitted_number, 'drain_pump' as component, 1 as quantity, 'f' as source_file, 5 as source_line");
        Assert.Equal(["J1 - - 2", "J2 - - 1", "J3 - - 1", "J4 - - 1"], Lines(ShopDataReader.Read(database, Day)!));
        Assert.Null(PartsInWords.Of(database));
    }

    private static IEnumerable<string> Lines(ShopData data) =>
        data.Jobs.OrderBy(j => j.JobId, StringComparer.Ordinal).SelectMany(j => j.Lines.Select(l => $"{j.JobId} {l.PartNumber ?? "-"} {l.FittedNumber ?? "-"} {l.Quantity}"));

    private static Database Shop(bool fits)
    {
        static JobRow Job(string id, int month, string family) => new(id, new DateOnly(2026, month, 1)) { Van = "1", ModelFamily = family, VisitReason = "failure", Outcome = "fixed_with_part", ClosedOn = new DateOnly(2026, month, 3) };
        Database database = new SmallShop { Jobs = [Job("J1", 1, "WX"), Job("J2", 2, "DR"), Job("J3", 3, "DR"), Job("J4", 4, "WX")] }.Open();
        foreach ((string job, string? typed, string component, int quantity) in new[] { ("J1", (string?)null, "drain_pump", 2), ("J2", null, "drain_pump", 1), ("J3", null, "door_seal", 1), ("J4", "ZZ9", "drain_pump", 1) })
        {
            database.Execute(
                "insert into job_parts by name select $job as job_id, 1 as line, $typed as part_raw, 'unresolved' as part_basis, $component as component, $quantity::integer as quantity, 'f' as source_file, 1 as source_line",
                ("job", job), ("typed", typed), ("component", component), ("quantity", quantity));
        }

        foreach ((string number, string component, decimal price, double space) in new[] { ("P1", "drain_pump", 40m, 1.0), ("P2", "drain_pump", 60m, 1.0), ("S1", "door_seal", 25m, 3.0), ("S2", "door_seal", 25m, 1.0) })
        {
            database.Execute(
                "insert into parts by name select $number as part_number, $number as current_number, $component as component, $price::decimal(12,2) as price, $space::double as space_units, true as available, 'listed' as basis, 'f' as source_file, 1 as source_line",
                ("number", number), ("component", component), ("price", price), ("space", space));
        }

        foreach ((string family, string part, string component) in fits ? new[] { ("WX", "P1", "drain_pump"), ("DR", "P2", "drain_pump"), ("DR", "S1", "door_seal"), ("DR", "S2", "door_seal") } : [])
        {
            database.Execute(
                "insert into fitments by name select $family as model_family, $part as part_number, $component as component, 'listed' as basis, 0 as times_seen, 1 as typical_quantity",
                ("family", family), ("part", part), ("component", component));
        }

        return database;
    }
}
