using PhoneNumbers;

namespace PartsSignal.EndToEnd.Tests.Privacy.Plants;

/// <summary>
/// Makes plants from a seed: names of twelve languages and their scripts, phone numbers of sixty countries in ten typings
/// each, e-mail addresses, cards, addresses of twenty countries. The forms marked as held out were chosen before the rules
/// were tuned and played no part in it.
/// </summary>
internal sealed class PlantMaker(int seed)
{
    private static readonly string[] Starts = ["Quen", "Brun", "Vor", "Zell", "Thur", "Grim", "Ostr", "Hald", "Yev", "Kettl", "Pomf", "Wrex", "Drav", "Lunth", "Sker", "Fjold", "Marv", "Uxb"];
    private static readonly string[] Middles = ["eth", "ild", "am", "osk", "ur", "ev", "ant", "ig", "ob", "ell"];
    private static readonly string[] Ends = ["by", "wick", "sen", "ska", "ova", "mann", "ez", "otti", "aux", "stra", "quist", "idis"];

    private static readonly string[] Given =
    [
        "Brunhilde", "Ethelred", "J\u00fcrgen", "Gr\u00e9goire", "Iñigo", "Sjoerd", "Pierluigi", "Grzegorz", "Şükran", "Zdeněk", "Nguyễn", "Þorbjörg",
        "Наталья", "Сергей", "Κωνσταντίνος", "Ελένη", "محمد", "فاطمة", "田中太郎", "王小明", "김민준", "नेहा", "Ögmundur", "Władysława",
    ];

    // Names that are words too; they count only beside a title, "call" or in the customer's column.
    private static readonly string[] WordNames = ["Baker", "Miller", "Daisy", "Fisher", "Mason", "Turner", "Grace", "Violet"];

    private static readonly string[] Regions =
    [
        "GB", "US", "DE", "FR", "ES", "IT", "NL", "PL", "BE", "AT", "CH", "IE", "PT", "SE", "NO", "DK", "FI", "IS", "CZ", "SK", "HU", "RO", "BG", "GR", "TR", "UA", "RU", "LT", "LV", "EE",
        "HR", "SI", "RS", "CA", "MX", "BR", "AR", "CL", "CO", "PE", "AU", "NZ", "ZA", "NG", "KE", "EG", "MA", "IN", "PK", "BD", "CN", "JP", "KR", "TH", "VN", "ID", "MY", "PH", "IL", "AE",
    ];

    private static readonly (string Form, string Pattern, bool HeldOut)[] Addresses =
    [
        ("GB", "12 {0} Road", false), ("US", "1450 {0} Avenue", false), ("IE", "7 {0} Terrace", false), ("DE", "{0}str. 13", false), ("AT", "{0}gasse 4", false), ("CH", "{0}weg 22", false),
        ("FR", "12 rue de la {0}", false), ("BE", "Rue {0} 45", false), ("ES", "calle {0} 8", false), ("MX", "Avenida {0} 310", false), ("NL", "{0}straat 19", false), ("IT", "via {0} 5", false),
        ("PL", "ul. {0} 17", false), ("SE", "{0}gatan 6", false), ("DK", "{0}vej 31", false), ("NO", "{0}veien 9", false), ("HU", "{0} utca 11", false),
        ("FI", "{0}katu 10 A", true), ("PT", "Rua das {0} 25", true), ("CZ", "{0} 12/5", true), ("RO", "Str. {0} nr. 14", true),
    ];

    private readonly Random _chance = new(seed);
    private readonly Dictionary<string, int> _given = new(StringComparer.Ordinal);
    private int _made;

    /// <summary>The next plant.</summary>
    public Plant Next() => (_made++ % 10) switch
    {
        0 or 1 or 2 or 3 => Name(),
        4 or 5 or 6 => Phone(),
        7 => Email(),
        8 => Card(),
        _ => Address(),
    };

    private Plant Name()
    {
        string given = GivenName(), family = Family();
        string word = WordNames[_chance.Next(WordNames.Length)];
        return _chance.Next(16) switch
        {
            0 => Of("full name", $"{given} {family}", given, family),
            1 => Of("small letters", $"{given} {family}".ToLowerInvariant(), given, family),
            2 => Of("capitals", $"{given} {family}".ToUpperInvariant(), given, family),
            3 => Of("family name alone", family, family),
            4 => Of("given name alone", given, given),
            5 => Of("call", $"call {family}", family),
            6 => Of("glued", "call" + family, family),
            7 => Of("title and word", $"Mrs {word}", word),
            8 => Of("ask for word", $"ask for {word}", word),
            9 => Of("customer is a word", word, word) with { Customer = $"Mr {word}" },
            10 => Misspelled(family),
            11 => Of("decomposed", Decomposed(given + " " + family), given, family),
            12 => Of("decomposed customer", Decomposed($"Jürgen {family}öv"), family + "öv") with { Customer = $"Jürgen {family}öv" },
            13 => Of("soft hyphen", family.Insert(3, "\u00ad"), family) with { HeldOut = true },
            14 => Of("in brackets behind a role", $"tenant ({given})", given) with { HeldOut = true },
            _ => Of("possessive and comma", $"{family.ToUpperInvariant()}, {given}'s", family, given) with { HeldOut = true },
        };
    }

    private Plant Misspelled(string family)
    {
        int at = _chance.Next(1, family.Length - 2);
        string slip = _chance.Next(3) switch
        {
            0 => family.Remove(at, 1),
            1 => family.Insert(at, family[at].ToString()),
            _ => family[..at] + family[at + 1] + family[at] + family[(at + 2)..],
        };
        return Of("misspelled customer", slip, slip) with { Customer = "Mrs " + family };
    }

    private Plant Phone()
    {
        string region = Regions[_chance.Next(Regions.Length)];
        var phones = PhoneNumberUtil.GetInstance();
        PhoneNumber number = phones.GetExampleNumberForType(region, PhoneNumberType.MOBILE) ?? phones.GetExampleNumber(region);
        for (int i = 0; i < 20; i++)
        {
            var other = new PhoneNumber.Builder().MergeFrom(number).SetNationalNumber((number.NationalNumber / 10_000 * 10_000) + (ulong)_chance.Next(10_000)).Build();
            if (phones.IsValidNumber(other))
            {
                number = other;
                break;
            }
        }

        string national = phones.Format(number, PhoneNumberFormat.NATIONAL), world = phones.Format(number, PhoneNumberFormat.INTERNATIONAL);
        string digits = phones.GetNationalSignificantNumber(number);
        int typing = _chance.Next(14);
        string typed = typing switch
        {
            0 => national,
            1 => world,
            2 => phones.Format(number, PhoneNumberFormat.E164),
            3 => "00" + phones.Format(number, PhoneNumberFormat.E164)[1..],
            4 => Grouped(national, "\u2013"),
            5 => Grouped(national, "\u00a0"),
            6 => Grouped(national, "."),
            7 => Grouped(national, " / "),
            8 => Wide(national),
            9 => string.Join(' ', national.Where(char.IsAsciiDigit)),
            10 => Grouped(world, "\u2011"),
            11 => Grouped(national, "\u00b7"),
            12 => "[" + Grouped(world, "] ") + "]",
            _ => Grouped(national, "_"),
        };
        return new Plant($"phone {typing}", typed, [], digits, null, typing >= 11);
    }

    private Plant Email()
    {
        string family = Family().ToLowerInvariant(), domain = Family().ToLowerInvariant();
        int typing = _chance.Next(8);
        string typed = typing switch
        {
            0 => $"{family}@{domain}.com",
            1 => $"{family} (at) {domain}.com",
            2 => $"{family} AT {domain} DOT com",
            3 => $"{family}\uff20{domain}.com",
            4 => $"daisy.{family}@mail.com",
            5 => $"violet@mail.com",
            6 => $"{family} [ at ] {domain} [ dot ] com",
            _ => $"baker {{at}} mail {{dot}} com",
        };
        return Of($"e-mail {typing}", typed, typing switch { 5 => ["violet"], 7 => ["baker"], 4 => [family, "daisy"], _ => [family] }) with { HeldOut = typing >= 6 };
    }

    private Plant Card()
    {
        int[] digits = [4, .. Enumerable.Range(0, 14).Select(_ => _chance.Next(10))];
        int sum = digits.Select((d, i) => i % 2 == 0 ? (d * 2 > 9 ? (d * 2) - 9 : d * 2) : d).Sum();
        string all = string.Concat(digits) + ((10 - (sum % 10)) % 10);
        int typing = _chance.Next(6);
        string between = typing switch { 0 => "", 1 => " ", 2 => "-", 3 => "\u00a0", 4 => ".", _ => "_" };
        return new Plant($"card {typing}", string.Join(between, all.Chunk(4).Select(c => new string(c))), [], all, null, typing == 5);
    }

    private Plant Address()
    {
        (string form, string pattern, bool heldOut) = Addresses[_chance.Next(Addresses.Length)];
        string street = Family();
        return Of("address " + form, string.Format(null, pattern, street), street) with { HeldOut = heldOut };
    }

    // Five customers who all name one person make a word of the name: a given name is planted a few times only.
    private string GivenName()
    {
        string given = Given[_chance.Next(Given.Length)];
        _given[given] = _given.GetValueOrDefault(given) + 1;
        return _given[given] < 5 ? given : Family();
    }

    private string Family() => Starts[_chance.Next(Starts.Length)] + Middles[_chance.Next(Middles.Length)] + Ends[_chance.Next(Ends.Length)];

    private static Plant Of(string form, string typed, params string[] words) => new(form, typed, words, "", null, false);

    private static string Grouped(string number, string between) =>
        string.Join(between, number.Split([' ', '-', '(', ')', '/', '.'], StringSplitOptions.RemoveEmptyEntries));

    private static string Wide(string number) => string.Concat(number.Select(c => char.IsAsciiDigit(c) ? (char)(c - '0' + '\uff10') : c));

    private static string Decomposed(string text) => text
        .Replace("ü", "u\u0308", StringComparison.Ordinal).Replace("é", "e\u0301", StringComparison.Ordinal).Replace("ñ", "n\u0303", StringComparison.Ordinal)
        .Replace("ö", "o\u0308", StringComparison.Ordinal).Replace("ě", "e\u030c", StringComparison.Ordinal).Replace("ł", "l\u0335", StringComparison.Ordinal);
}
