using System.Globalization;

namespace PartsSignal.SampleShop.Dialects;

/// <summary>Writes cells as an office does: its date order, decimal sign, currency and mark for nothing.</summary>
internal sealed class CellWriter(Dialect dialect)
{
    private const int MinutesPerDay = 24 * 60;

    public string Write(Cell cell) => cell.Form switch
    {
        CellForm.Text when cell.IsEmpty => double.IsNaN(cell.Number) ? dialect.Missing : "",
        CellForm.Day => Day((int)cell.Number),
        CellForm.Stamp => Stamp((long)cell.Number),
        CellForm.Whole => cell.Number.ToString("0", CultureInfo.InvariantCulture),
        CellForm.Decimal => Number(cell.Number),
        CellForm.Money => Money(cell.Number),
        _ => cell.Text,
    };

    public string Day(int day) => DateOnly.FromDayNumber(day).ToDateTime(TimeOnly.MinValue).ToString(dialect.DateFormat, CultureInfo.InvariantCulture);

    private static string Stamp(long minutes) =>
        DateOnly.FromDayNumber((int)(minutes / MinutesPerDay)).ToDateTime(TimeOnly.MinValue).AddMinutes(minutes % MinutesPerDay).ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture);

    private string Number(double number)
    {
        string text = number.ToString("0.00", CultureInfo.InvariantCulture);
        return dialect.DecimalComma ? text.Replace('.', ',') : text;
    }

    private string Money(double number) => dialect.Currency.Length == 0
        ? Number(number)
        : dialect.CurrencyFirst ? (dialect.Currency.Length == 1 ? dialect.Currency : dialect.Currency + " ") + Number(number) : $"{Number(number)} {dialect.Currency}";
}
