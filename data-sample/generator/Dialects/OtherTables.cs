using System.Globalization;
using PartsSignal.SampleShop.Chance;

namespace PartsSignal.SampleShop.Dialects;

/// <summary>Tables that lie in a shop's folder and are none of the store's: payroll, holidays, tools.</summary>
internal static class OtherTables
{
    public static TableDraft Make(string name, OtherRule other, ShopHistory shop, Dice dice)
    {
        int rows = other.Columns[0].Concept == "o_weekday" ? 6 : dice.Between(8, 160);
        var columns = new List<ColumnDraft>();
        foreach ((string concept, string form) in other.Columns)
        {
            int counter = dice.Between(1000, 90000);
            var cells = new Cell[rows];
            for (int row = 0; row < rows; row++)
            {
                cells[row] = Make(form, row, ref counter, shop, dice);
            }

            columns.Add(new ColumnDraft(concept, [], [], cells));
        }

        return new TableDraft(name, "none", columns) { KindsAlsoRight = other.KindsAlsoRight, Note = "none of the shop's repair records" };
    }

    private static Cell Make(string form, int row, ref int counter, ShopHistory shop, Dice dice)
    {
        string argument = form.Contains(' ', StringComparison.Ordinal) ? form[(form.IndexOf(' ', StringComparison.Ordinal) + 1)..] : "";
        switch (form.Split(' ')[0])
        {
            case "person":
                return Cell.Word($"{dice.Pick(DialectWords.NamesOf("first"))} {dice.Pick(DialectWords.NamesOf("last"))}");
            case "supplier":
                return Cell.Word(dice.Pick(DialectWords.NamesOf("supplier")));
            case "street":
                return Cell.Word($"{dice.Pick(DialectWords.NamesOf("street"))} {dice.Between(1, 99).ToString(CultureInfo.InvariantCulture)}");
            case "phone":
                return Cell.Word($"555-01{dice.Below(100).ToString("00", CultureInfo.InvariantCulture)}");
            case "mail":
                return Cell.Word($"m{dice.Below(9999).ToString(CultureInfo.InvariantCulture)}@example.org");
            case "month":
                return Cell.Word(DateOnly.FromDayNumber(shop.LastDay - (30 * (row / 6))).ToString("yyyy-MM", CultureInfo.InvariantCulture));
            case "date":
                return Cell.Day(shop.LastDay - dice.Below(900));
            case "later":
                return Cell.Day(shop.LastDay + dice.Between(-300, 500));
            case "serial":
                return Cell.Word(dice.Pick(shop.Machines).Serial);
            case "model":
                return Cell.Word(dice.Pick(shop.Models).Number);
            case "stamp":
                return Cell.Stamp(((shop.LastDay - 40L) * 24 * 60) + (15L * row));
            case "code":
                return Cell.Word(NumberShape.Fill("A9999", dice));
            case "counter":
                counter += dice.Below(120);
                return Cell.Whole(counter);
            case "whole":
                return Cell.Whole(dice.Below(int.Parse(argument, CultureInfo.InvariantCulture)));
            case "money":
                return Cell.Money(Math.Round(double.Parse(argument, CultureInfo.InvariantCulture) * dice.Uniform(), 2));
            case "decimal":
                return Cell.Decimal(Math.Round(double.Parse(argument, CultureInfo.InvariantCulture) * dice.Uniform(), 2));
            case "pick":
                return Cell.Word(dice.Pick(argument.Split(',')));
            case "notes":
                return dice.Chance(0.3) ? Cell.Word(dice.Pick(DialectWords.NamesOf("note"))) : Cell.Empty;
            default:
                throw new InvalidOperationException($"others.csv names no form '{form}'");
        }
    }
}
