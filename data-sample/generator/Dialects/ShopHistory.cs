using System.Globalization;
using PartsSignal.SampleShop.Chance;

namespace PartsSignal.SampleShop.Dialects;

internal enum CallEnd { Part, NoPart, Declined, Cancelled, Open }

internal sealed record Owner(string Name, string Phone, string Street, string Email, string Kind);

internal sealed record MachineModel(string Type, string Brand, string Family, string Number, int FirstMade, int LastMade);

internal sealed record Machine(MachineModel Model, string Serial, string Asset, int Made, int Installed, Owner Owner);

/// <param name="NewNumber">Number that replaced the first one on <paramref name="Changed"/>; null if it never changed.</param>
internal sealed record StockPart(string Number, string? NewNumber, int Changed, string Name, double Price, string Supplier, string Alias)
{
    public string NumberOn(int day) => NewNumber is not null && day >= Changed ? NewNumber : Number;
}

internal sealed record UsedPart(StockPart Part, string Number, int Quantity);

internal sealed record PartOrder(string Number, StockPart Part, string PartNumber, int Ordered, int? Received, int Quantity, string? JobNumber);

internal sealed record Call(string Number, Machine Machine, int Opened, int? Closed, int Visited, string Complaint, string ErrorCode, CallEnd End, IReadOnlyList<UsedPart> Parts, int Technician, int Visits, int Minutes);

/// <summary>What happened in a shop before anybody wrote it down: its machines, parts, calls and orders.</summary>
internal sealed class ShopHistory
{
    private readonly Dice _dice;
    private readonly Dialect _dialect;
    private readonly TradeRule _trade;
    private readonly FaultRule[] _faults;
    private readonly Dictionary<FaultRule, StockPart[]> _partsFor = [];
    private readonly double[] _faultWeights;

    public ShopHistory(long seed, Dialect dialect)
    {
        _dialect = dialect;
        _dice = Dice.For(seed, "history");
        _trade = DialectWords.Trades.First(t => t.Name == dialect.Trade);
        _faults = [.. DialectWords.Faults.Where(f => f.Trade == dialect.Trade && f.Language == dialect.CellLanguage)];
        _faultWeights = [.. _faults.Select(_ => _dice.LogNormal(1, 0.7))];
        LastDay = new DateOnly(_dice.Between(2023, 2026), _dice.Between(1, 12), 28).DayNumber;
        FirstDay = LastDay - (365 * _dice.Between(2, 5)) + _dice.Below(200);
        Technicians = MakeTechnicians();
        Suppliers = [.. Shuffled(DialectWords.NamesOf("supplier")).Take(_dice.Between(1, 4))];
        Models = MakeModels();
        Parts = MakeParts();
        int calls = (int)_dice.LogNormal(330, 0.5);
        calls = Math.Clamp(calls, 180, 900);
        Machines = MakeMachines(calls);
        Calls = MakeCalls(calls);
        Orders = MakeOrders();
    }

    public int FirstDay { get; }

    public int LastDay { get; }

    public IReadOnlyList<string> Technicians { get; }

    public IReadOnlyList<string> Suppliers { get; }

    public IReadOnlyList<MachineModel> Models { get; }

    public IReadOnlyList<StockPart> Parts { get; }

    public IReadOnlyList<Machine> Machines { get; }

    public IReadOnlyList<Call> Calls { get; }

    public IReadOnlyList<PartOrder> Orders { get; }

    /// <summary>Parts that a model's type can need.</summary>
    public IEnumerable<StockPart> PartsOf(MachineModel model) => _faults.Where(f => f.Type == model.Type).SelectMany(f => _partsFor[f]);

    private List<T> Shuffled<T>(IEnumerable<T> items)
    {
        List<T> list = [.. items];
        for (int i = list.Count - 1; i > 0; i--)
        {
            int j = _dice.Below(i + 1);
            (list[i], list[j]) = (list[j], list[i]);
        }

        return list;
    }

    private string PersonName() => $"{_dice.Pick(DialectWords.NamesOf("first"))} {_dice.Pick(DialectWords.NamesOf("last"))}";

    private List<string> MakeTechnicians()
    {
        int count = _dice.Between(2, 6);
        int form = _dice.Below(4);
        return [.. Shuffled(DialectWords.NamesOf("first")).Take(count).Select((first, i) => form switch
        {
            0 => first,
            1 => $"{first} {_dice.Pick(DialectWords.NamesOf("last"))}",
            2 => $"{first[0]}{_dice.Pick(DialectWords.NamesOf("last"))[0]}{(i + 1).ToString(CultureInfo.InvariantCulture)}",
            _ => $"T{(i + 1).ToString("00", CultureInfo.InvariantCulture)}",
        })];
    }

    private List<MachineModel> MakeModels()
    {
        var models = new List<MachineModel>();
        var taken = new HashSet<string>(StringComparer.Ordinal);
        string[] types = [.. _faults.Select(f => f.Type).Distinct(StringComparer.Ordinal)];
        foreach (string brand in Shuffled(_trade.Brands).Take(_dice.Between(2, 5)))
        {
            string shape = _dice.Pick(_trade.ModelShapes);
            string variant = _dice.Pick(["-{0}", "/{0}", " {1}", "{1}", ".{0}"]);
            foreach (string type in types)
            {
                for (int f = _dice.Between(1, 3); f > 0; f--)
                {
                    string family = NumberShape.FillNew(shape, _dice, taken);
                    int first = LastDay - _dice.Between(365 * 4, 365 * 16);
                    int last = first + _dice.Between(365 * 3, 365 * 8);
                    for (int v = 1; v <= _dice.Between(1, 4); v++)
                    {
                        string number = family + string.Format(CultureInfo.InvariantCulture, variant, v, (char)('A' + v - 1));
                        taken.Add(number);
                        models.Add(new MachineModel(type, brand, family, number, first, last));
                    }
                }
            }
        }

        return models;
    }

    private List<StockPart> MakeParts()
    {
        var parts = new List<StockPart>();
        var taken = new HashSet<string>(StringComparer.Ordinal);
        string[] shapes = [.. Shuffled(_trade.PartShapes).Take(_dice.Between(1, 2))];
        string aliasShape = _dice.Pick(["99999", "AA-99999", "9999999", "A9999A", "999-9999"]);
        var aliases = new HashSet<string>(StringComparer.Ordinal);
        foreach (FaultRule fault in _faults)
        {
            var made = new StockPart[_dice.Between(1, 3)];
            for (int i = 0; i < made.Length; i++)
            {
                string number = NumberShape.FillNew(_dice.Pick(shapes), _dice, taken);
                bool changed = _dice.Chance(0.2);
                string? next = changed ? (_dice.Chance(0.5) ? number + "A" : NumberShape.FillNew(_dice.Pick(shapes), _dice, taken)) : null;
                double price = Math.Round(_dice.LogNormal(_trade.TypicalPrice, 0.6), 2);
                made[i] = new StockPart(number, next, _dice.Between(FirstDay, LastDay), fault.Component, price, _dice.Pick(Suppliers), NumberShape.FillNew(aliasShape, _dice, aliases));
            }

            _partsFor[fault] = made;
            parts.AddRange(made);
        }

        return parts;
    }

    private List<Machine> MakeMachines(int calls)
    {
        var machines = new List<Machine>();
        var serials = new HashSet<string>(StringComparer.Ordinal);
        var shapes = _trade.Brands.ToDictionary(b => b, _ => _dice.Pick(_trade.SerialShapes));
        string assetShape = _dice.Pick(["EQ-9999", "99999", "M999", "AA-999", "INV99999"]);
        var assets = new HashSet<string>(StringComparer.Ordinal);
        Owner owner = NewOwner();
        for (int i = 0; i < calls * 0.6; i++)
        {
            MachineModel model = _dice.Pick(Models);
            int made = _dice.Between(model.FirstMade, Math.Min(model.LastMade, LastDay - 300));
            owner = _dice.Chance(0.85) ? NewOwner() : owner;
            string serial = NumberShape.FillNew(shapes[model.Brand], _dice, serials, made);
            machines.Add(new Machine(model, serial, NumberShape.FillNew(assetShape, _dice, assets), made, made + _dice.Between(20, 400), owner));
        }

        return machines;
    }

    private Owner NewOwner()
    {
        string name = PersonName();
        string street = _dice.Chance(0.5)
            ? $"{_dice.Between(1, 120).ToString(CultureInfo.InvariantCulture)} {_dice.Pick(DialectWords.NamesOf("street"))}"
            : $"{_dice.Pick(DialectWords.NamesOf("street"))} {_dice.Between(1, 120).ToString(CultureInfo.InvariantCulture)}";
        string phone = $"555-01{_dice.Below(100).ToString("00", CultureInfo.InvariantCulture)}";
        return new Owner(name, phone, street, $"{name[..1].ToLowerInvariant()}{_dice.Below(10000).ToString(CultureInfo.InvariantCulture)}@example.org", _dice.Pick(["trade", "private", "contract"]));
    }

    private List<Call> MakeCalls(int count)
    {
        int[] days = [.. Enumerable.Range(0, count).Select(_ => Workday(_dice.Between(FirstDay, LastDay))).Order()];
        var perYear = new Dictionary<int, int>();
        var perTechnician = new Dictionary<int, int>();
        int start = _dice.Between(1, 60000);
        string prefix = _dice.Pick(["R", "WO-", "SV/", "A", "26-"]);
        var calls = new List<Call>();
        for (int i = 0; i < count; i++)
        {
            Machine machine = _dice.Pick(Machines);
            FaultRule[] own = [.. _faults.Where(f => f.Type == machine.Model.Type)];
            FaultRule fault = own[_dice.Weighted([.. own.Select(f => _faultWeights[Array.IndexOf(_faults, f)])])];
            int technician = _dice.Below(Technicians.Count);
            int year = DateOnly.FromDayNumber(days[i]).Year;
            perYear[year] = perYear.GetValueOrDefault(year) + 1;
            perTechnician[technician] = perTechnician.GetValueOrDefault(technician) + 1;
            string number = _dialect.Key switch
            {
                JobKey.PerYear => perYear[year].ToString("0000", CultureInfo.InvariantCulture),
                JobKey.PerTechnician => perTechnician[technician].ToString(CultureInfo.InvariantCulture),
                JobKey.Prefixed => $"{prefix}{(start + i).ToString("00000", CultureInfo.InvariantCulture)}",
                _ => (start + i).ToString(CultureInfo.InvariantCulture),
            };
            calls.Add(MakeCall(number, machine, fault, days[i], technician));
        }

        return calls;
    }

    private Call MakeCall(string number, Machine machine, FaultRule fault, int opened, int technician)
    {
        var end = (CallEnd)_dice.Weighted([0.78, 0.11, 0.05, 0.03, 0.03]);
        int visited = Workday(opened + _dice.Between(0, 6));
        int closed = end == CallEnd.Part && _dice.Chance(0.5) ? Workday(visited + _dice.Between(1, 14)) : visited;
        if (closed > LastDay)
        {
            end = CallEnd.Open;
        }

        var used = new List<UsedPart>();
        if (end == CallEnd.Part)
        {
            used.Add(Use(_dice.Pick(_partsFor[fault]), closed));
            while (_dice.Chance(0.18) && used.Count < 3)
            {
                UsedPart more = Use(_dice.Pick(_partsFor[_dice.Pick([.. _faults.Where(f => f.Type == fault.Type)])]), closed);
                if (used.TrueForAll(u => u.Part != more.Part))
                {
                    used.Add(more);
                }
            }
        }

        string complaint = _dice.Pick(fault.Complaints) + (_dice.Chance(0.15) ? " " + _dice.Pick(DialectWords.NamesOf("suffix")) : "");
        string error = _dice.Chance(0.25) ? NumberShape.Fill(_dice.Pick(["E99", "F9", "A-99"]), _dice) : "";
        return new Call(number, machine, opened, end == CallEnd.Open ? null : closed, visited, complaint, error, end, used, technician, closed > visited ? 2 : 1, 5 * _dice.Between(3, 36));
    }

    private UsedPart Use(StockPart part, int day) => new(part, part.NumberOn(day), _dice.Chance(0.9) ? 1 : _dice.Between(2, 4));

    private List<PartOrder> MakeOrders()
    {
        var orders = new List<PartOrder>();
        int number = _dice.Between(100, 9000);
        string prefix = _dice.Pick(["", "PO-", "B", "EK"]);
        foreach (Call call in Calls.Where(c => c.Parts.Count > 0 && _dice.Chance(0.4)))
        {
            number += _dice.Between(1, 4);
            int ordered = Workday(call.Opened + _dice.Between(0, 3));
            int received = Workday(ordered + _dice.Between(1, 15));
            foreach (UsedPart used in call.Parts)
            {
                orders.Add(new PartOrder(prefix + number.ToString(CultureInfo.InvariantCulture), used.Part, used.Number, ordered, received > LastDay ? null : received, used.Quantity, _dice.Chance(0.8) ? call.Number : null));
            }
        }

        return orders;
    }

    private static int Workday(int day) => DateOnly.FromDayNumber(day).DayOfWeek switch
    {
        DayOfWeek.Saturday => day + 2,
        DayOfWeek.Sunday => day + 1,
        _ => day,
    };
}
