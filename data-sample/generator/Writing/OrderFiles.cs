using PartsSignal.SampleShop.Simulation;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Writing;

/// <summary>The orders as each supplier's own list shows them, and one list a spreadsheet has been through.</summary>
internal sealed class OrderFiles : IDisposable
{
    public const string FirstEarly = "orders-haldorvane-2021-2023.csv";
    public const string FirstLate = "orders-haldorvane-2024-2026.csv";
    public const string FirstDamaged = "orders-haldorvane-2024-q2-resaved.csv";
    public const string Second = "brixomere-invoices.csv";

    private static readonly int DamagedFrom = ShopCalendar.Day(2024, 4, 1);
    private static readonly int DamagedTo = ShopCalendar.Day(2024, 7, 1);
    private static readonly int LateFrom = ShopCalendar.Day(2024, 1, 1);

    private readonly DelimitedFile _early;
    private readonly DelimitedFile _late;
    private readonly DelimitedFile _damaged;
    private readonly DelimitedFile _second;

    public OrderFiles(string folder)
    {
        _early = new DelimitedFile(folder, FirstEarly, ',', DelimitedFile.Utf8);
        _late = new DelimitedFile(folder, FirstLate, ',', DelimitedFile.Utf8);
        _damaged = new DelimitedFile(folder, FirstDamaged, ',', DelimitedFile.Utf8);
        _second = new DelimitedFile(folder, Second, ';', DelimitedFile.Windows);
        string[] header = ["Order no", "Ordered", "Delivered", "Your reference", "Article", "Maker number", "Article text", "Pieces", "Net each", "Sent back", "Reason"];
        _early.Row(header);
        _late.Row(header);
        _damaged.Row(header.Where(h => h != "Article"));
        _second.Row("Invoice", "Invoice date", "Delivery", "Item code", "Mfr part", "Item", "Qty", "Unit net", "Customer ref", "Credit qty", "Credit reason");
    }

    public void Write(OrderLine line)
    {
        if (line.Second)
        {
            WriteSecond(line);
            return;
        }

        string number = line.Part.Versions[line.Version].Number;
        bool damaged = line.OrderedDay >= DamagedFrom && line.OrderedDay < DamagedTo;
        string shown = damaged ? Spreadsheet.Show(number) : number;
        string dates = damaged ? "dd/MM/yyyy" : "yyyy-MM-dd";
        DelimitedFile file = damaged ? _damaged : line.OrderedDay < LateFrom ? _early : _late;
        string[] own = damaged ? [] : [line.Part.Versions[line.Version].OwnNumberFirst];
        file.Row([
            line.OrderId,
            JobRow.DayText(line.OrderedDay, dates),
            Delivered(line, dates),
            line.JobId ?? "",
            .. own,
            shown,
            line.Part.Description,
            JobRow.Text(line.Quantity),
            JobRow.Money(line.Part.PriceOn(line.OrderedDay, false), false),
            Back(line),
            Reason(line)]);
    }

    public void Dispose()
    {
        _early.Dispose();
        _late.Dispose();
        _damaged.Dispose();
        _second.Dispose();
    }

    private void WriteSecond(OrderLine line) => _second.Row(
        line.OrderId,
        JobRow.DayText(line.OrderedDay, "dd.MM.yyyy"),
        Delivered(line, "dd.MM.yyyy"),
        line.Part.Versions[line.Version].OwnNumberSecond,
        line.OrderId[^1] < '7' ? line.Part.Versions[line.Version].Number : "",
        line.Part.Description,
        JobRow.Text(line.Quantity),
        JobRow.Money(line.Part.PriceOn(line.OrderedDay, true), true),
        line.JobId ?? "",
        Back(line),
        Reason(line));

    private static string Delivered(OrderLine line, string dates) =>
        line.ArrivesDay <= ShopCalendar.AsOf ? JobRow.DayText(line.ArrivesDay, dates) : "";

    private static string Back(OrderLine line) =>
        line.Returned > 0 && line.ArrivesDay <= ShopCalendar.AsOf ? JobRow.Text(line.Returned) : "";

    private static string Reason(OrderLine line) => Back(line).Length > 0 ? line.ReturnReason : "";
}
