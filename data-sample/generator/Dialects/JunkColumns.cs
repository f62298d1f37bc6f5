using System.Globalization;
using PartsSignal.SampleShop.Chance;

namespace PartsSignal.SampleShop.Dialects;

/// <summary>Columns that offices keep and the store has no use for: account numbers, time stamps, user names, notes.</summary>
internal static class JunkColumns
{
    public static TableDraft AddTo(TableDraft table, Dialect dialect, int lastDay, Dice dice)
    {
        var columns = table.Columns.ToList();
        foreach (JunkRule rule in DialectWords.Junk.Where(_ => dice.Chance(dialect.JunkShare)))
        {
            string constant = dice.Pick(rule.Values);
            var cells = new Cell[table.Rows];
            for (int row = 0; row < cells.Length; row++)
            {
                cells[row] = Make(rule, constant, row, lastDay, dice);
            }

            columns.Insert(PlaceIn(columns, dice), new ColumnDraft(rule.Concept, [], rule.Never, cells));
        }

        if (dice.Chance(dialect.JunkShare / 2))
        {
            columns.Insert(PlaceIn(columns, dice), new ColumnDraft("", [], [], [.. Enumerable.Repeat(Cell.Blank, table.Rows)]) { Fixed = "" });
        }

        return table with { Columns = columns };
    }

    // never between the columns of part groups
    private static int PlaceIn(List<ColumnDraft> columns, Dice dice)
    {
        int place = dice.Below(columns.Count + 1);
        while (place > 0 && place < columns.Count && columns[place].Group > 0)
        {
            place--;
        }

        return place;
    }

    private static Cell Make(JunkRule rule, string constant, int row, int lastDay, Dice dice) => rule.Form switch
    {
        "guid" => Cell.Word($"{dice.Next():x16}{dice.Next():x16}".Insert(20, "-").Insert(16, "-").Insert(12, "-").Insert(8, "-")),
        "constant" => Cell.Word(constant),
        "stamp" => Cell.Stamp(((lastDay + 3L) * 24 * 60) + 480 + dice.Below(300)),
        "pick" => Word(dice.Pick(rule.Values)),
        "notes" => dice.Chance(0.35) ? Cell.Word(dice.Pick(DialectWords.NamesOf("note"))) : Cell.Empty,
        "money" => Cell.Money(Math.Round(double.Parse(constant, CultureInfo.InvariantCulture) * dice.Uniform(), 2)),
        "decimal" => Cell.Decimal(Math.Round(double.Parse(constant, CultureInfo.InvariantCulture) * dice.Uniform(), 2)),
        "whole" => Cell.Whole(dice.Below(int.Parse(constant, CultureInfo.InvariantCulture))),
        "percent" => Cell.Word(dice.Between(8, 55).ToString(CultureInfo.InvariantCulture) + "%"),
        "sequence" => Cell.Whole(row + 1),
        _ => throw new InvalidOperationException($"junk.csv names no form '{rule.Form}'"),
    };

    private static Cell Word(string text) => text.Length == 0 ? Cell.Empty : Cell.Word(text);
}
