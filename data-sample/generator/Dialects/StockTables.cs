using System.Globalization;
using PartsSignal.SampleShop.Chance;

namespace PartsSignal.SampleShop.Dialects;

/// <summary>Everything beside the job log: orders, parts, numbers, models, machines, counts.</summary>
internal sealed class StockTables(Dialect dialect, ShopHistory shop, JobTables jobs, Dice dice)
{
    public TableDraft Orders(string name)
    {
        IReadOnlyList<PartOrder> rows = shop.Orders;
        bool withJob = dialect.Key is JobKey.Plain or JobKey.Prefixed && dice.Chance(0.7);
        return new TableBuilder(name, "part_orders", dice)
            .Add("order_id", rows, r => Cell.Word(r.Number), "order_id")
            .Add("supplier", rows, r => Cell.Word(r.Part.Supplier), "supplier")
            .Add("ordered", rows, r => Cell.Day(r.Ordered), "ordered_on")
            .Add("received", rows, r => Cell.Day(r.Received), "received_on")
            .Add("part", rows, r => Cell.Word(r.PartNumber), "part")
            .Add("description", rows, r => Cell.Word(r.Part.Name), present: 0.3)
            .Add("quantity", rows, r => Cell.Whole(r.Quantity), "quantity")
            .Add("unit_cost", rows, r => Cell.Money(Math.Round(r.Part.Price * 0.6, 2)), "unit_cost")
            .Add("for_job", rows, r => r.JobNumber is { } job ? Cell.Word(job) : Cell.Empty, present: withJob ? 1 : 0)
            .Build();
    }

    public TableDraft Parts(string name)
    {
        IReadOnlyList<StockPart> rows = shop.Parts;
        TableBuilder table = new TableBuilder(name, "parts", dice)
            .Add("part", rows, r => Cell.Word(r.NumberOn(shop.LastDay)), "part")
            .Add("description", rows, r => Cell.Word(r.Name), "description")
            .Add("price", rows, r => Cell.Money(r.Price), "price", present: 1)
            .Add("component", rows, r => Cell.Word(r.Name.Split(' ')[^1]))
            .Add("valid_from", rows, _ => Cell.Day(shop.LastDay - 90))
            .Add("supplier", rows, r => Cell.Word(r.Supplier), present: 0.25);
        if (dialect.MonthsAsColumns)
        {
            AddMonths(table, rows);
        }

        return table.Build("dates here are no jobs");
    }

    /// <summary>How many of each part went out in each month: a table of no kind, though a list of parts can be read from it.</summary>
    public TableDraft Usage(string name)
    {
        TableBuilder table = new TableBuilder(name, "none", dice)
            .Add("part", shop.Parts, r => Cell.Word(r.Number), fields: [], present: 1)
            .Add("description", shop.Parts, r => Cell.Word(r.Name), fields: [], present: 0.6);
        AddMonths(table, shop.Parts);
        return table.Build("months as columns", ["parts"]);
    }

    public TableDraft Supersessions(string name)
    {
        StockPart[] rows = [.. shop.Parts.Where(p => p.NewNumber is not null)];
        return new TableBuilder(name, "supersessions", dice)
            .Add("old_part", rows, r => Cell.Word(r.Number), "old_part")
            .Add("new_part", rows, r => Cell.Word(r.NewNumber!), "new_part")
            .Add("effective", rows, r => Cell.Day(r.Changed))
            .Build();
    }

    public TableDraft Aliases(string name) => new TableBuilder(name, "part_aliases", dice)
        .Add("supplier", shop.Parts, r => Cell.Word(r.Supplier), "supplier")
        .Add("alias", shop.Parts, r => Cell.Word(r.Alias), "alias")
        .Add("part", shop.Parts, r => Cell.Word(r.Number), "part")
        .Build();

    public TableDraft Fitments(string name)
    {
        bool byFamily = dice.Chance(0.6);
        (string Machine, StockPart Part)[] rows = [.. shop.Models.SelectMany(m => shop.PartsOf(m).Select(p => (byFamily ? m.Family : m.Number, p))).Distinct()
            .Where(r => (r.Item1.Length + r.p.Number[^1]) % 3 != 0)];
        return new TableBuilder(name, "fitments", dice)
            .Add(byFamily ? "family" : "model", rows, r => Cell.Word(r.Machine), byFamily ? "model_family" : "model")
            .Add("part", rows, r => Cell.Word(r.Part.Number), "part")
            .Add("description", rows, r => Cell.Word(r.Part.Name), fields: [], present: 0.3)
            .Build();
    }

    public TableDraft Models(string name)
    {
        bool years = dice.Chance(0.5);
        Cell When(int day) => years ? Cell.Whole(DateOnly.FromDayNumber(day).Year) : Cell.Day(day);
        return new TableBuilder(name, "models", dice)
            .Add("model", shop.Models, m => Cell.Word(m.Number), "model")
            .Add("family", shop.Models, m => Cell.Word(m.Family), "model_family")
            .Add("type", shop.Models, m => Cell.Word(jobs.TypeText(m.Type)), "appliance_type", present: 1)
            .Add("brand", shop.Models, m => Cell.Word(m.Brand), present: 0.9)
            .Add("first_made", shop.Models, m => When(m.FirstMade), "first_made")
            .Add("last_made", shop.Models, m => When(m.LastMade))
            .Add("remark", shop.Models, m => m.FirstMade % 4 == 0 ? Cell.Word(dice.Pick(DialectWords.NamesOf("note"))) : Cell.Empty)
            .Build("dates and text here are no jobs");
    }

    public TableDraft Units(string name)
    {
        Machine[] rows = dialect.ByAsset ? [.. shop.Machines] : [.. shop.Machines.Where((_, i) => i % 3 != 1)];
        TableBuilder table = new(name, "units", dice);
        if (dialect.ByAsset)
        {
            table.Add("asset", rows, r => Cell.Word(r.Asset), "serial")
                .Add("maker_serial", rows, r => Cell.Word(r.Serial));
        }
        else
        {
            table.Add("serial", rows, r => Cell.Word(r.Serial), "serial");
        }

        bool installed = dice.Chance(0.7);
        return table
            .Add("model", rows, r => Cell.Word(r.Model.Number), "model")
            .Add("type", rows, r => Cell.Word(jobs.TypeText(r.Model.Type)), present: dialect.ByAsset ? 1 : 0.6)
            .Add("brand", rows, r => Cell.Word(r.Model.Brand), present: 0.7)
            .Add("installed", rows, r => Cell.Day(r.Installed), "installed_on", present: installed ? 1 : 0)
            .Add("made", rows, r => jobs.Made(r.Made), "made_on", present: installed ? 0.4 : 1)
            .Add("removed", rows, r => r.Installed % 9 == 0 && r.Installed + 2500 < shop.LastDay ? Cell.Day(r.Installed + 2500) : Cell.Empty, present: installed ? 0.3 : 0)
            .Add("customer", rows, r => Cell.Word(r.Owner.Name), present: 0.8)
            .Add("address", rows, r => Cell.Word(r.Owner.Street))
            .Add("phone", rows, r => Cell.Word(r.Owner.Phone), present: 0.3)
            .Build();
    }

    public TableDraft VanCounts(string name)
    {
        string[] vans = [.. shop.Technicians.Take(4).Select((t, i) => (dice.Below(2), i) switch
        {
            (0, _) when dialect.Separator != '|' => $"Van {(i + 1).ToString(CultureInfo.InvariantCulture)}",
            _ => $"V{(i + 1).ToString(CultureInfo.InvariantCulture)}",
        }).Distinct(StringComparer.Ordinal)];
        StockPart[] parts = [.. shop.Parts.Where((_, i) => i % 3 != 2)];
        if (!dialect.WideVans)
        {
            (string Van, StockPart Part, int Count)[] rows = [.. vans.SelectMany(v => parts.Where(_ => dice.Chance(0.7)).Select(p => (v, p, dice.Below(5))))];
            return new TableBuilder(name, "van_counts", dice)
                .Add("van", rows, r => Cell.Word(r.Van), "van", present: 1)
                .Add("part", rows, r => Cell.Word(r.Part.Number), "part")
                .Add("description", rows, r => Cell.Word(r.Part.Name), fields: [], present: 0.3)
                .Add("on_hand", rows, r => Cell.Whole(r.Count), "on_hand")
                .Add("counted", rows, _ => Cell.Day(shop.LastDay))
                .Build();
        }

        TableBuilder wide = new TableBuilder(name, "van_counts", dice)
            .Add("part", parts, p => Cell.Word(p.Number), "part")
            .Add("description", parts, p => Cell.Word(p.Name), fields: [], present: 0.3);
        foreach (string van in vans)
        {
            wide.AddFixed(van, parts, _ => dice.Chance(0.2) ? Cell.Empty : Cell.Whole(dice.Below(5)), ["on_hand", "+van_columns"], ["price"], "on_hand");
        }

        return wide.Build("one column per van");
    }

    /// <summary>The people who go out, by the names the log uses.</summary>
    public TableDraft People(string name) => new TableBuilder(name, "none", dice)
        .Add("technician", shop.Technicians, Cell.Word, fields: [], present: 1)
        .Add("phone", shop.Technicians, _ => Cell.Word($"555-01{dice.Below(100).ToString("00", CultureInfo.InvariantCulture)}"), fields: [], present: 1)
        .Add("van", shop.Technicians, _ => Cell.Word($"V{dice.Between(1, 6).ToString(CultureInfo.InvariantCulture)}"), fields: [], present: 0.5)
        .Build("list of technicians");

    private void AddMonths(TableBuilder table, IReadOnlyList<StockPart> rows)
    {
        DateOnly last = DateOnly.FromDayNumber(shop.LastDay);
        for (int back = 11; back >= 0; back--)
        {
            table.AddFixed(last.AddMonths(-back).ToString("yyyy-MM", CultureInfo.InvariantCulture), rows, _ => Cell.Whole(dice.Chance(0.5) ? 0 : dice.Below(9)), [], ["quantity", "price", "on_hand", "unit_cost"]);
        }
    }
}
