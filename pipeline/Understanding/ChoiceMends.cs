namespace PartsSignal.Pipeline.Understanding;

/// <summary>
/// Columns exchanged where the rows themselves say which is which, whatever the weights found likelier: a total is no
/// price of one piece, a name is no number, the number of a job is no number of an order, and pieces delivered are
/// never more than pieces ordered.
/// </summary>
internal static class ChoiceMends
{
    private const double NearlyAll = 0.95;
    private const double Most = 0.8;
    private const double Some = 0.3;
    private const double Likely = 0.1;
    private const double Hardly = 0.005;
    private const double LikelySure = 0.8;
    private const int FewestRows = 3;
    private const int LettersOfAWord = 5;
    private const int Mostly = 8;
    private const double Cent = 0.011;
    private static readonly string[] Texts = ["description", "complaint", "parts_list"];
    private static readonly string[] OfParts = ["part", "description"];
    private static readonly string[] PartLines = ["job_parts", "part_orders", "van_counts", "fitments"];
    private static readonly string[] OnPartLines = ["quantity", "from_van"];

    /// <summary>The choice, mended.</summary>
    /// <param name="choice">Which column gives which field.</param>
    /// <param name="table">The table.</param>
    /// <param name="evidence">Its evidence.</param>
    /// <param name="second">The tables of the shop.</param>
    /// <param name="settled">Log odds that only an answer of a person has.</param>
    public static FieldChoice Of(FieldChoice choice, TableSample table, TableEvidence evidence, SecondLook second, double settled)
    {
        int[] columns = [.. choice.Columns];
        int At(string field) => ((IList<string>)choice.Fields).IndexOf(field);
        int Column(string field) => At(field) is var f and >= 0 ? columns[f] : -1;
        bool IsOpen(string field) => Column(field) is var c and >= 0 && choice.Odds[c, At(field)] < settled;
        IEnumerable<int> Free() => Enumerable.Range(0, table.Columns.Count).Where(c => !columns.Contains(c) && table.Columns[c].Filled > 0 && Enumerable.Range(0, choice.Fields.Count).Any(f => choice.Odds[c, f] > -settled));
        void Give(string field, int column) => columns[At(field)] = column;

        bool IsListed(int c) => KindMends.Names(evidence.Columns[c], second, "parts", "part");
        bool IsLikelyListed(int c) => IsListed(c) || (IsCode(table.Columns[c]) && KindMends.NamesParts(evidence.Columns[c], second));
        bool IsUnrelated(int c) => evidence.Columns[c].Links.Count == 0;

        // The first column that names the rows of a price list is the shop's own number.
        if (choice.Kind == "parts" && Column("part") < 0 && Free().FirstOrDefault(c => IsNumber(table.Columns[c]), -1) is var own and >= 0)
        {
            Give("part", own);
        }

        string price = choice.Kind == "part_orders" ? "unit_cost" : "price";
        if (IsOpen(price) && Column("quantity") is var pieces and >= 0 && Free().FirstOrDefault(c => IsPriceOf(table.Columns[c], table.Columns[pieces], table.Columns[Column(price)]), -1) is var unit and >= 0)
        {
            Give(price, unit);
        }

        if (choice.Kind == "part_orders" && IsOpen("quantity") && Free().FirstOrDefault(c => IsOrdered(table.Columns[c], table.Columns[Column("quantity")]), -1) is var ordered and >= 0)
        {
            Give("quantity", ordered);
        }

        if (choice.Kind == "parts" && IsOpen("part") && IsWords(table.Columns[Column("part")]) && (Column("description") < 0 || IsOpen("description"))
            && Free().Append(Column("description")).FirstOrDefault(c => c >= 0 && IsNumber(table.Columns[c]), -1) is var number and >= 0)
        {
            int words = Column("part");
            Give("part", number);
            Give("description", Column("description") is var name && (name < 0 || name == number) ? words : name);
        }

        // Numbers that stand in the price list are the parts', and what stands beside them is no number.
        if (PartLines.Contains(choice.Kind) && (Column("part") < 0 || (IsOpen("part") && !IsListed(Column("part"))))
            && Enumerable.Range(0, table.Columns.Count).FirstOrDefault(c => (Column("part") < 0 || IsUnrelated(Column("part")) ? IsLikelyListed(c) : IsListed(c)) && (Free().Contains(c) || (c == Column("description") && IsOpen("description"))), -1) is var listed and >= 0)
        {
            if (Column("description") == listed)
            {
                int name = At("description");
                columns[name] = -1;
                Give("description", Free().Where(c => c != listed && IsWords(table.Columns[c]) && evidence.Columns[listed].Determines[c] >= Mostly).OrderByDescending(c => evidence.Columns[listed].Determines[c]).FirstOrDefault(-1));
            }

            Give("part", listed);
        }

        if (choice.Kind == "part_orders" && IsOpen("order_id") && Column("job_id") < 0 && KindMends.Names(evidence.Columns[Column("order_id")], second, "jobs", "job_id"))
        {
            int job = Column("order_id"), order = At("order_id");
            int other = Free().Where(c => NamesRows(table.Columns[c])).OrderByDescending(c => Math.Max(choice.Odds[c, order], FieldChoice.LogOdds(Hardly))).ThenBy(c => c).FirstOrDefault(-1);
            Give("job_id", job);
            Give("order_id", other);
        }

        // What a machine is stands where the words for machines stand.
        if (At("appliance_type") >= 0 && (Column("appliance_type") < 0 || (IsOpen("appliance_type") && CellDoubts.Are(evidence, Column("appliance_type"), "appliance_type")))
            && Free().Concat(Column("description") is var said and >= 0 && choice.Kind == "jobs" && IsOpen("description") ? [said] : []).Where(c => CellDoubts.NamesAppliances(evidence.Columns[c])).OrderBy(c => c).FirstOrDefault(-1) is var type and >= 0)
        {
            if (Column("description") == type)
            {
                Give("description", -1);
            }

            Give("appliance_type", type);
        }

        // A name that may be a customer's is kept as one until somebody says otherwise.
        foreach (string field in Texts)
        {
            if (At("customer_name") >= 0 && Column("customer_name") < 0 && IsOpen(field) && FieldChoice.Chance(choice.Odds[Column(field), At(field)]) < LikelySure
                && FieldChoice.Chance(choice.Odds[Column(field), At("customer_name")]) >= Likely)
            {
                Give("customer_name", Column(field));
                Give(field, -1);
            }
        }

        // Pieces of what? A log that names no part counts none.
        foreach (string field in OnPartLines)
        {
            if (choice.Kind == "jobs" && IsOpen(field) && OfParts.All(f => Column(f) < 0))
            {
                Give(field, -1);
            }
        }

        return choice with { Columns = columns };
    }

    // A total is the price of one piece times the pieces; only rows of more than one piece tell.
    private static bool IsPriceOf(ColumnSample unit, ColumnSample pieces, ColumnSample total)
    {
        int told = 0, fits = 0, ones = 0, same = 0;
        for (int i = 0; i < total.Numbers.Length; i++)
        {
            if (unit.Numbers[i] is { } u && pieces.Numbers[i] is { } n && total.Numbers[i] is { } t && u > 0 && n > 0)
            {
                (told, fits) = n > 1 ? (told + 1, fits + (Math.Abs((u * n) - t) <= Cent ? 1 : 0)) : (told, fits);
                (ones, same) = n == 1 ? (ones + 1, same + (Math.Abs(u - t) <= Cent ? 1 : 0)) : (ones, same);
            }
        }

        return told >= FewestRows && fits >= NearlyAll * told && same >= NearlyAll * ones;
    }

    private static bool IsOrdered(ColumnSample ordered, ColumnSample delivered)
    {
        if (!ordered.IsNumbers || ordered.IsAmounts)
        {
            return false;
        }

        int both = 0, same = 0, more = 0;
        for (int i = 0; i < ordered.Numbers.Length; i++)
        {
            if (ordered.Numbers[i] is { } o && delivered.Numbers[i] is { } d)
            {
                both++;
                same += o == d ? 1 : 0;
                more += o > d ? 1 : 0;
            }
        }

        return more > 0 && same + more == both && same >= Most * both;
    }

    private static bool IsWords(ColumnSample column) => column.Filled > 0 && !column.IsNumbers && column.Texts.Count(IsWord) >= Most * column.Filled;

    // Five letters in a row.
    private static bool IsWord(string text)
    {
        int run = 0;
        foreach (char c in text)
        {
            run = char.IsLetter(c) ? run + 1 : 0;
            if (run == LettersOfAWord)
            {
                return true;
            }
        }

        return false;
    }

    private static bool NamesRows(ColumnSample column) => IsCode(column) && column.Distinct >= Some * column.Filled;

    private static bool IsCode(ColumnSample column) => column.Filled > 0 && !column.IsDates && !column.IsAmounts && column.Texts.Count(HasDigit) >= NearlyAll * column.Filled;

    private static bool IsNumber(ColumnSample column) => column.Filled > 0 && column.Values.IsKey && !column.IsDates && !column.IsAmounts
        && column.Texts.Count(t => HasDigit(t) && t.Count(c => c == ' ') <= 1) >= NearlyAll * column.Filled;

    private static bool HasDigit(string text) => text.Any(char.IsAsciiDigit);
}
