using PartsSignal.SampleShop.Chance;

namespace PartsSignal.SampleShop.Dialects;

/// <summary>Which tables a shop keeps, with junk columns, in its own order and under its own headers.</summary>
internal static class DialectTables
{
    public static IReadOnlyList<TableDraft> Log(Dialect dialect, ShopHistory shop, HeaderNames names, long seed, out JobTables jobs)
    {
        jobs = new JobTables(dialect, shop, Dice.For(seed, "jobs"));
        IReadOnlyList<TableDraft> log = jobs.Log(FileName("jobs", dialect, seed));
        bool sameEachYear = Dice.For(seed, "years").Chance(0.6);
        return [.. log.Select((t, i) => Finish(t, dialect, shop, names, seed, sameEachYear ? 0 : i))];
    }

    public static IReadOnlyList<TableDraft> Rest(Dialect dialect, ShopHistory shop, JobTables jobs, HeaderNames names, long seed)
    {
        Dice dice = Dice.For(seed, "tables");
        var stock = new StockTables(dialect, shop, jobs, dice);
        var tables = new List<TableDraft>();
        string Name(string table) => FileName(table, dialect, seed);
        if (dialect.Parts == PartLayout.Child)
        {
            tables.Add(jobs.Lines(Name("job_parts")));
        }

        void Perhaps(double share, string table, Func<string, TableDraft> make)
        {
            if (dice.Chance(share))
            {
                tables.Add(make(Name(table)));
            }
        }

        Perhaps(0.6, "part_orders", stock.Orders);
        Perhaps(0.65, "parts", stock.Parts);
        Perhaps(0.3, "supersessions", stock.Supersessions);
        Perhaps(0.2, "part_aliases", stock.Aliases);
        Perhaps(0.2, "fitments", stock.Fitments);
        Perhaps(0.45, "models", stock.Models);
        Perhaps(dialect.ByAsset ? 1 : 0.5, "units", stock.Units);
        Perhaps(0.45, "van_counts", stock.VanCounts);
        Perhaps(0.08, "months", stock.Usage);
        Perhaps(0.15, "people", stock.People);
        tables.AddRange(jobs.CodeLists(Name("codes")));
        var finished = tables.Where(t => t.Rows > 2).Select((t, i) => Finish(t, dialect, shop, names, seed, 100 + i)).ToList();
        for (int others = dice.Weighted([0.45, 0.3, 0.15, 0.1]); others > 0; others--)
        {
            OtherRule rule = dice.Pick(DialectWords.Others);
            TableDraft other = OtherTables.Make(Name(rule.Table), rule, shop, dice);
            if (finished.TrueForAll(t => t.Name != other.Name))
            {
                finished.Add(Finish(other, dialect, shop, names, seed, 200 + others));
            }
        }

        return finished;
    }

    private static string FileName(string table, Dialect dialect, long seed) => Dice.For(seed, "file " + table).Pick(DialectWords.FileNames(table, dialect.Language));

    private static TableDraft Finish(TableDraft table, Dialect dialect, ShopHistory shop, HeaderNames names, long seed, int number)
    {
        Dice dice = Dice.For(seed, "finish", number);
        return names.Name(JunkColumns.AddTo(Mixed(table, dice), dialect, shop.LastDay, dice));
    }

    // half of the tables keep the usual order; the others mix it, the columns of part groups staying together at the end
    private static TableDraft Mixed(TableDraft table, Dice dice)
    {
        if (dice.Chance(0.5))
        {
            return table;
        }

        var free = table.Columns.Where(c => c.Group == 0).ToList();
        for (int i = free.Count - 1; i > 0; i--)
        {
            int j = dice.Below(i + 1);
            (free[i], free[j]) = (free[j], free[i]);
        }

        return table with { Columns = [.. free, .. table.Columns.Where(c => c.Group > 0)] };
    }
}
