using System.Globalization;
using PartsSignal.SampleShop.Chance;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Simulation;

/// <summary>The two suppliers and how long they take.</summary>
internal static class Supplier
{
    public const string First = "Haldorvane";
    public const string Second = "Brixomere";

    public static string Name(bool second) => second ? Second : First;

    /// <summary>Day a line ordered today arrives; the second supplier runs short every winter.</summary>
    public static int ArrivalDay(int day, bool second, Dice dice)
    {
        double days = second ? dice.LogNormal(5, 0.45) : dice.LogNormal(2.8, 0.40);
        int month = ShopCalendar.Date(day).Month;
        if (second && month is 11 or 12 or 1 && dice.Chance(0.22))
        {
            days *= 4;
        }

        return ShopCalendar.NextWorkday(day + Math.Max(1, (int)Math.Round(days)));
    }
}

/// <summary>A line of an order.</summary>
internal sealed class OrderLine
{
    public required string OrderId { get; init; }

    public required bool Second { get; init; }

    public required int OrderedDay { get; init; }

    public required int ArrivesDay { get; init; }

    public required PartLineage Part { get; init; }

    public required int Version { get; init; }

    public required int Quantity { get; init; }

    /// <summary>Job it was ordered for; null: for stock.</summary>
    public required string? JobId { get; init; }

    /// <summary>Van it restocks; -1: for a job.</summary>
    public required int Van { get; init; }

    public int Returned { get; init; }

    public string ReturnReason { get; init; } = "";
}

/// <summary>Orders parts for jobs and for the vans, and hands them over when they arrive.</summary>
internal sealed class OrderDesk(Numbering numbers, IReadOnlyList<VanStock> vans, IShopLog log, Dice dice)
{
    private readonly SortedDictionary<int, List<OrderLine>> _arrivals = [];

    /// <summary>Orders a piece for a job.</summary>
    public OrderLine ForJob(PartLineage part, int quantity, string jobId, int day)
    {
        bool second = dice.Chance(part.SecondSupplierShare);
        return Place(part, quantity, second, numbers.NextOrder(second, day), jobId, -1, day);
    }

    /// <summary>Weekly: one order per supplier and van.</summary>
    public void Restock(int van, int day)
    {
        var orders = new Dictionary<bool, string>();
        foreach ((PartLineage part, int quantity) in vans[van].Missing.ToList())
        {
            if (day >= part.EndDay)
            {
                continue;
            }

            bool second = dice.Chance(part.SecondSupplierShare);
            if (!orders.TryGetValue(second, out string? id))
            {
                orders[second] = id = numbers.NextOrder(second, day);
            }

            Place(part, quantity, second, id, null, van, day);
            vans[van].NoteOrdered(part, quantity);
        }
    }

    public void ReceiveUpTo(int day)
    {
        while (_arrivals.Count > 0 && _arrivals.Keys.First() is int first && first <= day)
        {
            foreach (OrderLine line in _arrivals[first])
            {
                vans[line.Van].Receive(line);
            }

            _arrivals.Remove(first);
        }
    }

    private OrderLine Place(PartLineage part, int quantity, bool second, string id, string? job, int van, int day)
    {
        bool back = job is null && dice.Chance(0.015);
        var line = new OrderLine
        {
            OrderId = id,
            Second = second,
            OrderedDay = day,
            ArrivesDay = Supplier.ArrivalDay(day, second, dice),
            Part = part,
            Version = part.VersionOn(day),
            Quantity = quantity,
            JobId = job,
            Van = van,
            Returned = back ? 1 : 0,
            ReturnReason = back ? dice.Pick(["faulty out of the box", "wrong part sent", "damaged in transit"]) : "",
        };
        log.Ordered(line);
        if (van >= 0)
        {
            if (!_arrivals.TryGetValue(line.ArrivesDay, out List<OrderLine>? due))
            {
                _arrivals[line.ArrivesDay] = due = [];
            }

            due.Add(line);
        }

        return line;
    }
}

/// <summary>Job and order numbers; they go on from area to area.</summary>
internal sealed class Numbering
{
    private readonly Dictionary<int, int> _jobs = [];
    private readonly Dictionary<(bool Second, int Year), int> _orders = [];
    private int _jobCount;

    /// <summary>Job numbers before and after the office changed its software look different.</summary>
    public (string Id, int Number) NextJob(int day)
    {
        int year = ShopCalendar.Year(day);
        int number = _jobs[year] = _jobs.GetValueOrDefault(year) + 1;
        string text = number.ToString("00000", CultureInfo.InvariantCulture);
        string two = (year % 100).ToString("00", CultureInfo.InvariantCulture);
        return (day < ShopCalendar.SoftwareChange ? $"{two}/{text}" : $"J{two}-{text}", _jobCount++);
    }

    public string NextOrder(bool second, int day)
    {
        int year = ShopCalendar.Year(day);
        int number = _orders[(second, year)] = _orders.GetValueOrDefault((second, year)) + 1;
        return second
            ? $"{(year % 100).ToString("00", CultureInfo.InvariantCulture)}{(400000 + number).ToString(CultureInfo.InvariantCulture)}"
            : $"H{year.ToString(CultureInfo.InvariantCulture)}-{number.ToString("0000", CultureInfo.InvariantCulture)}";
    }
}
