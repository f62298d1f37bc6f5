using System.Globalization;
using PartsSignal.SampleShop.Chance;

namespace PartsSignal.SampleShop.World;

/// <summary>
/// A fictional shop whose words are not those of the tables: it calls a part a drain motor and hears "dispenser no water",
/// writes O for 0 in model numbers, has no list of models, a register without types, serials that begin with year and week
/// of building, the closing day under "Done", technicians but no vans, and a motor on refrigerators, where the tables have none.
/// </summary>
internal static class OwnWordsShop
{
    private const int Jobs = 1500;
    private const double LookAlikeShare = 0.08;
    private static readonly DateOnly FirstDay = new(2022, 1, 3);
    private static readonly string[] Engineers = ["Ines", "Jost", "Mira"];

    private static readonly (string Type, string[] Families)[] Appliances =
        [("Washer", ["WD4410", "WD6020"]), ("Dishwasher", ["GS3050", "GS7010"]), ("Fridge", ["KL2030", "KL5040"])];

    private static readonly (string Type, string Trouble, string Part, int Weight)[] Faults =
    [
        ("Washer", "does not drain", "drain pump", 4), ("Washer", "no spin", "motor", 2), ("Washer", "leaks at the door", "door seal", 3),
        ("Dishwasher", "water stays in", "drain motor", 5), ("Dishwasher", "not cleaning", "spray arm", 2), ("Dishwasher", "leaks", "hose clamp", 1),
        ("Fridge", "dispenser no water", "inlet valve", 4), ("Fridge", "not cooling", "start relay", 3), ("Fridge", "no water at the dispenser", "water filter", 1),
        ("Fridge", "noisy", "motor", 1),
    ];

    /// <summary>Writes the shop's files.</summary>
    /// <param name="folder">Folder for them; it must exist.</param>
    /// <param name="seed">The same seed writes the same bytes.</param>
    /// <returns>What is true of them.</returns>
    public static OwnWordsTruth Write(string folder, long seed)
    {
        var dice = Dice.For(seed, "own words");
        var jobs = new List<string> { "Call,Rang,Done,Kind,Make,Model,Serial,Trouble,Engineer,Result,Fitted,Part No,Price" };
        var register = new List<string> { "Serial,Make,Model,In use since" };
        var parts = new Dictionary<(string, string), int>();
        var built = new Dictionary<string, DateOnly>(StringComparer.Ordinal);
        var troubles = new Dictionary<string, int>(StringComparer.Ordinal);
        int lookAlikes = 0;
        for (int i = 0; i < Jobs; i++)
        {
            (string type, string trouble, string part) = Fault(dice);
            string[] families = Appliances.First(a => a.Type == type).Families;
            string model = $"{families[dice.Below(families.Length)]}-{"ABCD"[dice.Below(4)]}";
            DateOnly rang = FirstDay.AddDays(i * 1000 / Jobs);
            DateOnly made = rang.AddDays(-dice.Between(200, 4000));
            string serial = string.Create(CultureInfo.InvariantCulture, $"{ISOWeek.GetYear(made.ToDateTime(default)) % 100:00}{ISOWeek.GetWeekOfYear(made.ToDateTime(default)):00}{10000 + i}");
            bool alike = dice.Chance(LookAlikeShare);
            string written = alike ? model.Replace('0', 'O') : model;
            lookAlikes += alike ? 1 : 0;
            parts[(type, part)] = parts.GetValueOrDefault((type, part)) + 1;
            built[serial] = made;
            troubles[trouble] = troubles.GetValueOrDefault(trouble) + 1;
            jobs.Add(string.Join(',', $"{7000 + i}", Day(rang), Day(rang.AddDays(dice.Between(0, 12))), type, "Ostmark", written, serial, trouble, Engineers[dice.Below(Engineers.Length)], "part fitted", part, Number(part), Price(part)));
            if (dice.Chance(0.4))
            {
                register.Add(string.Join(',', serial, "Ostmark", model, Day(made.AddDays(dice.Between(10, 120)))));
            }
        }

        string[] list = [.. Faults.Select(f => f.Part).Distinct(StringComparer.Ordinal).Select(p => string.Join(',', Number(p), p, Price(p)))];
        File.WriteAllLines(Path.Combine(folder, "calls.csv"), jobs);
        File.WriteAllLines(Path.Combine(folder, "parts.csv"), ["Part No,Name,Cost", .. list]);
        File.WriteAllLines(Path.Combine(folder, "register.csv"), register);
        return new OwnWordsTruth(Jobs, parts, troubles, built, [.. Appliances.SelectMany(a => a.Families)], lookAlikes, "WD4410-Z") { Technicians = Engineers };
    }

    private static (string Type, string Trouble, string Part) Fault(Dice dice)
    {
        int at = dice.Below(Faults.Sum(f => f.Weight));
        foreach ((string type, string trouble, string part, int weight) in Faults)
        {
            if (at < weight)
            {
                return (type, trouble, part);
            }

            at -= weight;
        }

        throw new InvalidOperationException("The weights cover every number below their sum.");
    }

    // Every part has a number and a price of its own, in the order of the faults.
    private static string Number(string part) => string.Create(CultureInfo.InvariantCulture, $"OM-{4100 + (17 * Place(part))}");

    private static string Price(string part) => string.Create(CultureInfo.InvariantCulture, $"{12 + (9 * Place(part))}.50");

    private static int Place(string part) => Array.FindIndex(Faults, f => f.Part == part);

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}

/// <summary>What is true of such a shop.</summary>
/// <param name="Jobs">Its jobs.</param>
/// <param name="Parts">Jobs by type of appliance and part fitted.</param>
/// <param name="Troubles">Jobs by what the customer said.</param>
/// <param name="Built">Build day by serial; its year and ISO week are the first four digits of the serial.</param>
/// <param name="Families">Its model families.</param>
/// <param name="LookAlikes">Jobs whose model is written with O for 0.</param>
/// <param name="NewVariant">A model of a known family that no file names.</param>
internal sealed record OwnWordsTruth(
    int Jobs,
    IReadOnlyDictionary<(string Type, string Part), int> Parts,
    IReadOnlyDictionary<string, int> Troubles,
    IReadOnlyDictionary<string, DateOnly> Built,
    IReadOnlyList<string> Families,
    int LookAlikes,
    string NewVariant)
{
    /// <summary>Its technicians, who stand in for vans.</summary>
    public required IReadOnlyList<string> Technicians { get; init; }
}
