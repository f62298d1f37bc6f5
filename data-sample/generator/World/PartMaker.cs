using System.Globalization;
using PartsSignal.SampleShop.Chance;

namespace PartsSignal.SampleShop.World;

/// <summary>Makes the catalog of parts: every component's pool, with the numbers each part has carried over the years.</summary>
internal sealed class PartMaker
{
    // numbers a spreadsheet takes for a power of ten or for a date, and two that differ by leading zeros alone
    private static readonly string[] Awkward = ["1E10", "3E05", "2E14", "7E22", "MAR-01", "SEP-12", "DEC-04", "JUN-30", "0060117", "60117"];
    private static readonly string[] AwkwardComponents = ["knob", "lamp", "clamp_set", "filter"];

    private readonly Dice _dice = Dice.For(7, "parts");
    private readonly HashSet<string> _used = [];
    private readonly Queue<string> _awkward = new(Awkward);
    private int _ownFirst = 40210;
    private int _ownSecond = 7120;

    public IReadOnlyList<PartLineage> MakeAll()
    {
        DataTable table = DataTable.Read("part-kinds");
        var parts = new List<PartLineage>();
        foreach (string[] row in table.Rows)
        {
            string[] words = table.Text(row, "words").Split('|');
            for (int i = 0; i < table.Whole(row, "pool"); i++)
            {
                string component = table.Text(row, "component");
                double price = Math.Max(1.5, _dice.LogNormal(table.Number(row, "price"), 0.28));
                parts.Add(new PartLineage
                {
                    Index = parts.Count,
                    Component = component,
                    Description = words[i % words.Length],
                    Price = Math.Round((decimal)price, 1) - 0.05m,
                    SizeClass = table.Text(row, "size"),
                    ReturnableDays = _dice.Pick([0, 30, 60, 60, 90]),
                    WarrantyDays = _dice.Pick([180, 365, 365, 730]),
                    SecondSupplierShare = component == Faults.PumpComponent ? 0.5 : _dice.Pick([0.0, 0.0, 0.15, 0.6, 1.0]),
                    Versions = MakeVersions(component),
                });
            }
        }

        foreach (PartLineage bearing in parts.Where(p => p.Component == "drum_bearing").Take(2))
        {
            bearing.KitDay = bearing.Versions[^1].EffectiveDay;
            bearing.KitPart = parts.First(p => p.Component == "door_seal" && p.Index % 2 == bearing.Index % 2);
        }

        parts.First(p => p.Component == "timer").EndDay = ShopCalendar.Day(2024, 2, 1);
        return parts;
    }

    private List<PartVersion> MakeVersions(string component)
    {
        var versions = new List<PartVersion>();
        int count = component == "drum_bearing" ? 2 : 1 + _dice.Weighted([0.36, 0.32, 0.20, 0.12]);
        string number = NewNumber(component);
        int day = 0;
        for (int i = 0; i < count; i++)
        {
            versions.Add(new PartVersion(number, day, OwnFirst(), OwnSecond()));
            day = component == "drum_bearing"
                ? ShopCalendar.Day(2024, 5, 1)
                : Math.Max(day + 400, ShopCalendar.Day(2008 + ((i + 1) * 5), 1, 15)) + _dice.Below(1500);
            if (day > ShopCalendar.AsOf - 60)
            {
                break;
            }

            number = NextNumber(number, component);
        }

        return versions;
    }

    private string NextNumber(string number, string component)
    {
        if (char.IsAsciiLetterUpper(number[^1]) && number[^1] < 'H' && number.Length > 5)
        {
            string next = number[..^1] + (char)(number[^1] + 1);
            if (_used.Add(next))
            {
                return next;
            }
        }

        return NewNumber(component);
    }

    private string NewNumber(string component)
    {
        if (AwkwardComponents.Contains(component) && _awkward.Count > 0)
        {
            string awkward = _awkward.Dequeue();
            _used.Add(awkward);
            return awkward;
        }

        while (true)
        {
            string number = _dice.Below(4) switch
            {
                0 => $"{_dice.Between(20, 69)}-{Four()}",
                1 => $"00{_dice.Between(10000, 99999).ToString(CultureInfo.InvariantCulture)}",
                2 => $"{_dice.Between(2000, 9999).ToString(CultureInfo.InvariantCulture)}",
                _ => $"{(char)('A' + _dice.Below(8))}{(char)('K' + _dice.Below(4))}{Four()}{(char)('A' + _dice.Below(3))}",
            };
            if (_used.Add(number))
            {
                return number;
            }
        }
    }

    private string Four() => _dice.Below(10000).ToString("0000", CultureInfo.InvariantCulture);

    private string OwnFirst() => $"HV{(_ownFirst += _dice.Between(3, 17)).ToString(CultureInfo.InvariantCulture)}";

    private string OwnSecond() =>
        $"{(_ownSecond += _dice.Between(2, 9)).ToString(CultureInfo.InvariantCulture)}.{_dice.Between(10, 99).ToString(CultureInfo.InvariantCulture)}";
}
