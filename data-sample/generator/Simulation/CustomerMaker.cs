using System.Globalization;
using PartsSignal.SampleShop.Chance;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Simulation;

/// <summary>A household, or one house of the contract customer.</summary>
/// <param name="Number">Number within the area.</param>
/// <param name="Name">Name; invented.</param>
/// <param name="Phone">From the ranges kept free for fiction.</param>
/// <param name="Address">Invented street and place.</param>
/// <param name="Email">At example.com or empty.</param>
/// <param name="Van">Van that serves the street, from 0.</param>
/// <param name="Loyalty">Chance that a call comes to this shop and not to another.</param>
/// <param name="IsContract">One of the guest houses whose appliances are in the register.</param>
internal sealed record Customer(
    int Number, string Name, string Phone, string Address, string Email, int Van, double Loyalty, bool IsContract)
{
    public const double ContractPace = 4;
}

/// <summary>Makes the people of one area: invented names, streets, and telephone numbers from ranges kept free for fiction.</summary>
internal sealed class CustomerMaker
{
    private static readonly string[] FictionPrefixes =
    [
        "07700 900", "01632 960", "020 7946 0", "0113 496 0", "0114 496 0", "0115 496 0", "0116 496 0", "0117 496 0",
        "0118 496 0", "0121 496 0", "0131 496 0", "0141 496 0", "0151 496 0", "0161 496 0", "0191 498 0", "028 9649 6",
        "029 2018 0", "0808 157 0", "0306 999 0",
    ];

    private readonly string[] _first;
    private readonly string[] _last;
    private readonly string[] _streets;
    private readonly string[] _places;
    private readonly int _area;

    public CustomerMaker(int area)
    {
        DataTable table = DataTable.Read("names");
        _first = Words(table, "first");
        _last = Words(table, "last");
        _streets = Words(table, "street");
        _places = Words(table, "place");
        _area = area;
    }

    public IReadOnlyList<string> Streets => _streets;

    public Customer Household(int number, Dice dice)
    {
        int street = dice.Below(_streets.Length);
        string first = dice.Pick(_first);
        string last = dice.Pick(_last);
        string name = dice.Chance(0.6) ? $"{first} {last}" : $"{(dice.Chance(0.5) ? "Mr" : "Mrs")} {last}";
        string email = dice.Chance(0.35)
            ? $"{Plain(first)}.{Plain(last)}{number.ToString(CultureInfo.InvariantCulture)}@example.com"
            : "";
        return new Customer(
            number, name, Phone(number), Address(_streets[street], dice), email, street % 3, 0.5 + (0.2 * dice.Uniform()), false);
    }

    public Customer GuestHouse(int number, int house, Dice dice)
    {
        string name = $"Ellerquay Guest Houses, house {(house + 1).ToString(CultureInfo.InvariantCulture)}";
        int street = dice.Below(_streets.Length);
        string email = $"house{(house + 1).ToString(CultureInfo.InvariantCulture)}@ellerquay.example.org";
        return new Customer(number, name, Phone(number), Address(_streets[street], dice), email, street % 3, 1, true);
    }

    private string Address(string street, Dice dice) =>
        $"{dice.Between(1, 180).ToString(CultureInfo.InvariantCulture)} {street}, {_places[_area % _places.Length]}";

    // numbers do not repeat within an area until the ranges are used up; further areas carry a country code nobody has
    private string Phone(int number)
    {
        string prefix = FictionPrefixes[number / 1000 % FictionPrefixes.Length];
        int tail = ((number * 619) + (number / 1000 * 7)) % 1000;
        string area = _area == 0 ? "" : $"+999 {_area.ToString("00", CultureInfo.InvariantCulture)} ";
        string more = number < 1000 * FictionPrefixes.Length ? "" : $" ext {(number / (1000 * FictionPrefixes.Length)).ToString(CultureInfo.InvariantCulture)}";
        return $"{area}{prefix}{tail.ToString("000", CultureInfo.InvariantCulture)}{more}";
    }

    private static string[] Words(DataTable table, string kind) =>
        [.. table.Rows.Where(r => table.Text(r, "kind") == kind).Select(r => table.Text(r, "text"))];

    private static string Plain(string name) =>
        new([.. name.ToLowerInvariant().Where(char.IsAsciiLetterLower)]);
}
