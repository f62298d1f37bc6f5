using System.Text;
using PartsSignal.SampleShop.Chance;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Simulation;

/// <summary>Types what the customer said, the way an office types: shorthand, misspellings, things said in passing.</summary>
internal sealed class ComplaintWriter
{
    private static readonly string[] Openings = ["cust says ", "lady reports ", "rang again, ", "urgent: ", "tenant: ", "machine "];

    private static readonly (string Long, string Short)[] Shorthand =
    [
        ("water", "wtr"), ("washing", "wash"), ("customer", "cust"), ("program", "prog"), ("minutes", "min"),
        ("doesn't", "doesnt"), ("doesn't", "dosnt"), ("won't", "wont"), ("with", "w/"), ("temperature", "temp"), ("making", "mkg"),
    ];

    private readonly ILookup<string, (string Type, string Phrase)> _phrases;
    private readonly string[] _passing;
    private readonly IReadOnlyList<string> _streets;

    public ComplaintWriter(IReadOnlyList<string> streets)
    {
        DataTable table = DataTable.Read("phrases");
        _phrases = table.Rows.ToLookup(r => table.Text(r, "kind"), r => (table.Text(r, "type"), table.Text(r, "phrase")));
        DataTable passing = DataTable.Read("passing");
        _passing = [.. passing.Rows.Select(r => passing.Text(r, "phrase"))];
        _streets = streets;
    }

    /// <summary>The typed line, and what of it is personal (empty: nothing).</summary>
    public (string Text, string Planted) Write(string type, string kind, string code, Customer caller, Dice dice)
    {
        if (kind == ComplaintOdds.NoKind)
        {
            return ("", "");
        }

        string[] fitting = [.. _phrases[kind].Where(p => p.Type == type || p.Type == "any").Select(p => p.Phrase)];
        var text = new StringBuilder();
        if (dice.Chance(0.18))
        {
            text.Append(dice.Chance(0.4) ? $"{TypeWord(type, dice)} " : dice.Pick(Openings));
        }

        text.Append(Rough(dice.Pick(fitting), dice));
        if (code.Length > 0)
        {
            text.Append(dice.Pick([", code ", " shows ", ", display says ", " - error "])).Append(code);
        }

        if (dice.Chance(0.28))
        {
            text.Append(dice.Pick([", ", " - ", ". ", " "])).Append(dice.Pick(_passing));
        }

        string planted = dice.Chance(0.015) ? Personal(caller, dice) : "";
        if (planted.Length > 0)
        {
            text.Append(Lead(planted)).Append(planted);
        }

        string line = text.ToString();
        return (dice.Chance(0.05) ? line.ToUpperInvariant() : dice.Chance(0.3) ? char.ToUpperInvariant(line[0]) + line[1..] : line, planted);
    }

    private static string Lead(string planted) =>
        planted.Contains('@', StringComparison.Ordinal) ? ", mail " : char.IsDigit(planted[0]) && planted.Contains(',', StringComparison.Ordinal) ? ", lives at " : char.IsDigit(planted[0]) || planted[0] == '+' ? ", pls ring " : ", ask for ";

    private string Personal(Customer caller, Dice dice) => dice.Below(4) switch
    {
        0 => caller.Email.Length > 0 ? caller.Email : caller.Phone,
        1 => caller.Address,
        2 => dice.Chance(0.5) ? caller.Phone.Replace(" ", "", StringComparison.Ordinal) : caller.Phone,
        _ => $"{dice.Between(2, 90).ToString(System.Globalization.CultureInfo.InvariantCulture)} {dice.Pick(_streets)}, back door",
    };

    private static string TypeWord(string type, Dice dice) => type switch
    {
        "washer" => dice.Pick(["washer", "w/m", "washing machine"]),
        "dryer" => dice.Pick(["dryer", "tumbler"]),
        "dishwasher" => dice.Pick(["dishwasher", "d/w"]),
        "refrigerator" => dice.Pick(["fridge", "fridge freezer"]),
        "range" => dice.Pick(["cooker", "range"]),
        _ => dice.Pick(["microwave", "micro"]),
    };

    private static string Rough(string phrase, Dice dice)
    {
        if (dice.Chance(0.30))
        {
            (string plain, string brief) = dice.Pick(Shorthand);
            phrase = phrase.Replace(plain, brief, StringComparison.Ordinal);
        }

        if (dice.Chance(0.45))
        {
            phrase = phrase.Replace("'", "", StringComparison.Ordinal);
        }

        return dice.Chance(0.10) ? Misspell(phrase, dice) : phrase;
    }

    private static string Misspell(string phrase, Dice dice)
    {
        int at = 1 + dice.Below(Math.Max(1, phrase.Length - 2));
        if (at + 1 >= phrase.Length || !char.IsAsciiLetter(phrase[at]) || !char.IsAsciiLetter(phrase[at + 1]))
        {
            return phrase;
        }

        return dice.Below(3) switch
        {
            0 => phrase[..at] + phrase[at + 1] + phrase[at] + phrase[(at + 2)..],
            1 => phrase.Remove(at, 1),
            _ => phrase.Insert(at, phrase[at].ToString()),
        };
    }
}
