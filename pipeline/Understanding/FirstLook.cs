using PartsSignal.Pipeline.Config;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>What each table would be as each kind, before the tables are looked at together.</summary>
internal sealed class FirstLook
{
    private const int MostEssential = 12;

    // What names the rows of a kind, what stands beside it, and when it happened: a register names each machine once, a list of fitments many times.
    private static readonly (string What, IReadOnlyDictionary<string, string> Fields)[] Told =
    [
        ("name", Pairs("jobs job_id|job_parts job_id|part_orders order_id|parts part|supersessions old_part|part_aliases alias|fitments model|models model|units serial|van_counts part")),
        ("beside", Pairs("jobs serial|job_parts part|part_orders part|parts description|supersessions new_part|part_aliases part|fitments part|models brand|units model|van_counts van")),
        ("day", Pairs("jobs opened_on|part_orders ordered_on|supersessions effective_on|models first_made|units installed_on|van_counts counted_on")),
    ];

    private static readonly string[] OfNames = ["distinct", "is_key", "points_to_key", "pointed_at_by"];
    private static readonly string[] OfDays = ["days_spread", "days_distinct", "ends_after_others", "filled"];
    private readonly Dictionary<(int Table, string Kind), FieldChoice> _choices = [];

    /// <summary>Scores every table as every kind.</summary>
    public FirstLook(ShopEvidence shop, FieldLevels levels, FieldModels models)
    {
        (Shop, Levels) = (shop, levels);
        for (int t = 0; t < shop.Tables.Count; t++)
        {
            TableEvidence table = shop.Tables[t];
            foreach (string kind in FieldCatalog.Kinds)
            {
                _choices.Add((t, kind), FieldChoice.Of(kind, models.Odds(table, kind, (c, f) => levels.Of(table, c, kind, f))));
            }
        }
    }

    /// <summary>The tables.</summary>
    public ShopEvidence Shop { get; }

    /// <summary>How evidence becomes levels.</summary>
    public FieldLevels Levels { get; }

    /// <summary>The best columns for a table, were it of the kind.</summary>
    public FieldChoice Choice(int table, string kind) => _choices[(table, kind)];

    /// <summary>How well a table is the kind, by its columns alone.</summary>
    public KindFit Fit(int table, string kind)
    {
        FieldChoice choice = Choice(table, kind);
        double ChanceOf(string field) => choice.ColumnOf(field) is var c and >= 0 ? FieldChoice.Chance(choice.Odds[c, ((IList<string>)choice.Fields).IndexOf(field)]) : 0;
        double[] chances = [.. choice.Fields.Select(ChanceOf)];
        IReadOnlyList<string> essential = FieldCatalog.Telling(kind);
        return new KindFit(
            chances.Sum(),
            chances.Where(c => c > 0).DefaultIfEmpty(0).Average(),
            chances.Count(c => c > 0) / (double)Math.Max(1, Shop.Tables[table].Columns.Count(c => c.IsFilled)),
            essential.Sum(ChanceOf) / essential.Count,
            FieldCatalog.Needs(kind).Min(group => group.Max(ChanceOf)),
            [.. essential.Select(ChanceOf)]);
    }

    /// <summary>How well a table is each kind; for none, how well it is the best of them.</summary>
    public IReadOnlyList<KindFit> Fits(int table)
    {
        KindFit[] fits = [.. FieldCatalog.Kinds.Select(k => Fit(table, k))];
        return [.. fits, new KindFit(fits.Max(f => f.Sum), fits.Max(f => f.Mean), fits.Max(f => f.Read), fits.Max(f => f.Essential), fits.Max(f => f.Needed), [.. fits.Select(f => f.Needed)])];
    }

    private static Dictionary<string, string> Pairs(string pairs) => pairs.Split('|').Select(p => p.Split(' ')).ToDictionary(p => p[0], p => p[1], StringComparer.Ordinal);

    /// <summary>Levels for deciding the kind, by <see cref="KindModels.Names"/>.</summary>
    public IReadOnlyList<byte[]> KindLevels(int table) => [.. Lists(table).Select(l => l.Levels.ToArray())];

    /// <summary>Chances of each table's kinds, by <see cref="KindModels.Names"/>.</summary>
    public IReadOnlyList<double[]> Kinds(KindModels models) => [.. Enumerable.Range(0, Shop.Tables.Count).Select(t => models.Chances(KindLevels(t)))];

    /// <summary>The same, for more to be added.</summary>
    internal IReadOnlyList<FeatureList> Lists(int table)
    {
        IReadOnlyList<KindFit> fits = Fits(table);
        var lists = new List<FeatureList>();
        for (int k = 0; k < fits.Count; k++)
        {
            KindFit[] others = [.. fits.Take(FieldCatalog.Kinds.Count).Where((_, i) => i != k)];
            var list = new FeatureList();
            list.Size("sum", fits[k].Sum);
            list.Share("mean", fits[k].Mean);
            list.Share("read", fits[k].Read);
            list.Share("essential", fits[k].Essential);
            list.Share("needed", fits[k].Needed);
            list.Share("sum_lead", 0.5 + ((fits[k].Sum - others.Max(o => o.Sum)) / 10));
            list.Share("essential_lead", 0.5 + ((fits[k].Essential - others.Max(o => o.Essential)) / 2));
            list.Share("needed_lead", 0.5 + ((fits[k].Needed - others.Max(o => o.Needed)) / 2));
            list.Share("read_lead", 0.5 + ((fits[k].Read - others.Max(o => o.Read)) / 2));
            list.Count("better_kinds", others.Count(o => o.Sum * o.Needed > fits[k].Sum * fits[k].Needed));
            for (int i = 0; i < MostEssential; i++)
            {
                list.Share("essential " + i, fits[k].Chances.ElementAtOrDefault(i));
            }

            byte[] name = Shop.Tables[table].NameLevels;
            list.Level("name", name[k]);
            list.Level("name_of_other", name.Where((_, i) => i != k).Max());
            list.Level("name_of_none", name[^1]);
            foreach ((string what, IReadOnlyDictionary<string, string> fields) in Told)
            {
                int column = k < FieldCatalog.Kinds.Count && fields.TryGetValue(FieldCatalog.Kinds[k], out string? field) ? Choice(table, FieldCatalog.Kinds[k]).ColumnOf(field) : -1;
                foreach (string feature in what == "day" ? OfDays : OfNames)
                {
                    list.Level($"{what} {feature}", column < 0 ? 0 : Shop.Tables[table].Columns[column].Levels[ColumnFeatures.Place(feature)]);
                }
            }

            for (int i = HeaderTokens.Count; i > 0; i--)
            {
                list.Count($"headers {i}", Shop.Tables[table].Columns.Count(c => c.Levels[^i] > 0));
            }

            foreach (int i in ShopRelations.LevelsForKinds)
            {
                list.Level("table " + i, Shop.Tables[table].Levels[i]);
            }

            lists.Add(list);
        }

        return lists;
    }
}

/// <summary>How well a table is a kind.</summary>
/// <param name="Sum">Sum of the chances of the columns chosen.</param>
/// <param name="Mean">Their mean.</param>
/// <param name="Read">Share of the columns that would be read.</param>
/// <param name="Essential">Mean chance of the essential fields, 0 for those without a column.</param>
/// <param name="Needed">Chance of the weakest of what the kind needs.</param>
/// <param name="Chances">Chances of the essential fields.</param>
internal sealed record KindFit(double Sum, double Mean, double Read, double Essential, double Needed, IReadOnlyList<double> Chances);
