namespace PartsSignal.SampleShop.Dialects;

internal enum CellForm { Text, Day, Stamp, Whole, Decimal, Money }

/// <summary>A cell before the office's way of writing it. Days are day numbers, stamps minutes since midnight of day one.</summary>
internal readonly record struct Cell(CellForm Form, string Text, double Number)
{
    /// <summary>An empty cell that the office's mark for missing values may fill.</summary>
    public static readonly Cell Empty = new(CellForm.Text, "", double.NaN);

    /// <summary>A cell of a column that nobody uses: empty without any mark.</summary>
    public static readonly Cell Blank = new(CellForm.Text, "", 0);

    public bool IsEmpty => Form == CellForm.Text && Text.Length == 0;

    public static Cell Word(string text) => new(CellForm.Text, text, 0);

    public static Cell Day(int? day) => day is { } d ? new Cell(CellForm.Day, "", d) : Empty;

    public static Cell Stamp(long minutes) => new(CellForm.Stamp, "", minutes);

    public static Cell Whole(int number) => new(CellForm.Whole, "", number);

    public static Cell Decimal(double number) => new(CellForm.Decimal, "", number);

    public static Cell Money(double number) => new(CellForm.Money, "", number);
}
