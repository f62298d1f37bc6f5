namespace PartsSignal.Pipeline.Understanding;

/// <summary>Decides the kinds and columns of all tables of a shop together.</summary>
internal static class ShopUnderstanding
{
    private const double Certain = 9;
    private const double CountsOfAVan = 0.8;
    private const double OnlyOne = 0.9;

    /// <summary>What each table is taken for, in their order.</summary>
    /// <param name="tables">The tables.</param>
    /// <param name="answers">What a person has settled.</param>
    /// <param name="model">The weights.</param>
    public static IReadOnlyList<TableReading> Decide(IReadOnlyList<SampledTable> tables, ReadingAnswers answers, ReadingModel model)
    {
        var evidence = ShopEvidence.Of([.. tables.Select(t => t.Sample)], HeaderLexicon.Shipped);
        var first = new FirstLook(evidence, new FieldLevels(HeaderLexicon.Shipped.Fields), model.First);
        double[][] firstKinds = [.. first.Kinds(model.FirstKinds).Select((chances, t) => Settled(tables, evidence, t, answers) is { } kind ? Sure(kind) : chances)];
        var second = new SecondLook(first, firstKinds);
        TableReading[] readings = [.. tables.Select((_, t) => Decide(tables, evidence, t, second, answers, model))];
        return [.. readings.Select((r, t) => CautiousDefaults.Of(t, readings, evidence, odds => Choose(r.Kind, odds, tables[t].Sample, evidence.Tables[t], second)))];
    }

    private static TableReading Decide(IReadOnlyList<SampledTable> tables, ShopEvidence evidence, int at, SecondLook second, ReadingAnswers answers, ReadingModel model)
    {
        SampledTable table = tables[at];
        string key = ReadingAnswers.KeyOf(table.Sample);
        string? settled = Settled(tables, evidence, at, answers);
        double[] chances = settled is not null ? Sure(settled) : table.Sample.Columns.Count == 0 ? Sure(KindModels.None) : model.SecondKinds.Chances(second.KindLevels(at));
        (string Kind, double Chance)[] kinds = [.. KindModels.Names.Select((k, i) => (Kind: k, Chance: chances[i])).OrderByDescending(k => k.Chance)];
        bool asks = settled is null && table.Sample.Columns.Count > 0 && TableReading.IsDoubtful(kinds, second.First, at);

        kinds = asks ? KindMends.Of(kinds, at, second) : kinds;

        // Pieces by month may be those on hand or those used.
        asks |= settled is null && kinds[0].Kind == "van_counts" && table.Sample.Columns.Any(c => MonthHeaders.AreMonths(c.Names));
        if (kinds[0].Kind == KindModels.None)
        {
            return new TableReading(table, key, KindModels.None, kinds, null, []) { AsksKind = asks, IsAnswered = settled is not null };
        }

        double[,] odds = second.Odds(at, kinds[0].Kind, model.Second);
        VansAsColumns(odds, kinds[0].Kind, table.Sample);
        DayAndPlace(odds, kinds[0].Kind, table.Sample);
        foreach (int twin in Twins(tables, evidence, at).Reverse())
        {
            Apply(odds, kinds[0].Kind, table.Sample, ReadingAnswers.KeyOf(tables[twin].Sample), answers);
        }

        FieldChoice choice = Choose(kinds[0].Kind, odds, table.Sample, evidence.Tables[at], second);
        return new TableReading(table, key, kinds[0].Kind, kinds, choice, [.. ColumnDoubt.Of(choice, evidence.Tables[at])]) { AsksKind = asks, IsAnswered = settled is not null };
    }

    private static FieldChoice Choose(string kind, double[,] odds, TableSample table, TableEvidence evidence, SecondLook second) =>
        ChoiceMends.Of(DayOrder.Mended(FieldChoice.Of(kind, odds), table, Certain), table, evidence, second, Certain);

    // A row tells of one van. Where a heading stands over several columns of counts, each is a van, and its cells are what it carries.
    private static void VansAsColumns(double[,] odds, string kind, TableSample table)
    {
        IReadOnlyList<string> fields = KindFields.Of(kind);
        for (int c = 0; kind == "van_counts" && c < table.Columns.Count; c++)
        {
            // There may be 0 pieces of a part on a van, but no van has the number 0.
            if (table.Columns[c].IsNumbers && table.Columns[c].Numbers.Contains(0))
            {
                odds[c, ((IList<string>)fields).IndexOf("van")] = FieldModels.Never;
            }

            if (table.Columns[c].Repeats > 1 && table.Columns[c].IsNumbers)
            {
                int onHand = ((IList<string>)fields).IndexOf("on_hand");
                odds[c, ((IList<string>)fields).IndexOf("van")] = FieldModels.Never;
                odds[c, onHand] = Math.Max(odds[c, onHand], FieldChoice.LogOdds(CountsOfAVan));
            }
        }
    }

    // A count has one date column, and its places are vans or stores, even where the headings do not say so.
    private static void DayAndPlace(double[,] odds, string kind, TableSample table)
    {
        if (kind != "van_counts")
        {
            return;
        }

        int[] days = [.. Enumerable.Range(0, table.Columns.Count).Where(c => table.Columns[c].IsDates)];
        int[] places = [.. Enumerable.Range(0, table.Columns.Count).Where(c => VanColumns.ArePlaces(table.Columns[c]))];
        foreach ((string field, int[] columns) in new[] { ("counted_on", days), ("van", places) })
        {
            int f = ((IList<string>)KindFields.Of(kind)).IndexOf(field);
            if (columns is [var only])
            {
                odds[only, f] = Math.Max(odds[only, f], FieldChoice.LogOdds(OnlyOne));
            }
        }
    }

    // Years of one log are asked about once: what is answered for one holds for all.
    private static IEnumerable<int> Twins(IReadOnlyList<SampledTable> tables, ShopEvidence evidence, int at) =>
        Enumerable.Range(0, tables.Count).Where(t => t == at || evidence.Tables[t].IsTwin(evidence.Tables[at])).OrderBy(t => t == at ? 0 : 1);

    private static string? Settled(IReadOnlyList<SampledTable> tables, ShopEvidence evidence, int at, ReadingAnswers answers) =>
        Twins(tables, evidence, at).Where(t => ShopRelations.AreOneLog(tables[t].Sample, tables[at].Sample)).Select(t => answers.Kind(ReadingAnswers.KeyOf(tables[t].Sample))).FirstOrDefault(k => k is not null);

    private static double[] Sure(string kind) => [.. KindModels.Names.Select(k => k == kind ? 1.0 : 0)];

    private static void Apply(double[,] odds, string kind, TableSample table, string key, ReadingAnswers answers)
    {
        IReadOnlyList<string> fields = KindFields.Of(kind);
        for (int f = 0; f < fields.Count; f++)
        {
            string? header = answers.Header(key, fields[f]);

            // Another year of the log may lack the column that somebody named.
            header = header == ReadingAnswers.Nothing || table.Columns.Any(c => c.Name == header) ? header : null;
            for (int c = 0; c < table.Columns.Count; c++)
            {
                string? field = answers.Field(key, table.Columns[c].Name);
                odds[c, f] = header is not null ? (header == table.Columns[c].Name ? Certain : -Certain)
                    : field is not null ? (field == fields[f] ? Certain : -Certain)
                    : odds[c, f];
            }
        }

        // A column that somebody gave to one field gives no other, and no other column gives that field.
        for (int c = 0; c < table.Columns.Count; c++)
        {
            int given = Enumerable.Range(0, fields.Count).FirstOrDefault(f => answers.Header(key, fields[f]) == table.Columns[c].Name || answers.Field(key, table.Columns[c].Name) == fields[f], -1);
            for (int f = 0; given >= 0 && f < fields.Count; f++)
            {
                odds[c, f] = f == given ? Certain : -Certain;
            }

            for (int other = 0; given >= 0 && other < table.Columns.Count; other++)
            {
                odds[other, given] = other == c ? Certain : -Certain;
            }
        }
    }
}
