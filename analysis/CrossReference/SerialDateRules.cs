using System.Collections.Concurrent;

namespace PartsSignal.Analysis.CrossReference;

/// <summary>All rules of the shop's table.</summary>
public sealed class SerialDateRules
{
    /// <summary>No rules: every serial is silent.</summary>
    public static readonly SerialDateRules None = new([]);

    private const int ShortSerial = 64;
    private const int ShortestMisspelled = 5;
    private const int MostBrands = 2_000;
    private readonly SerialDateRule[] _rules;
    private readonly ConcurrentDictionary<string, BrandRules> _ofBrands = new(StringComparer.Ordinal);

    /// <summary>Keeps the rules in the order of the table; of two that fit one serial the first is used.</summary>
    public SerialDateRules(IEnumerable<SerialDateRule> rules) => _rules = [.. rules];

    /// <summary>Every build interval a serial can mean; never the newest alone.</summary>
    /// <param name="brand">Brand as typed.</param>
    /// <param name="serial">Serial as typed; empty: silent.</param>
    /// <param name="notAfter">Day on which the appliance was seen; nothing built later.</param>
    public SerialDateReading Read(string? brand, ReadOnlySpan<char> serial, DateOnly notAfter)
    {
        serial = serial.Trim();
        if (serial.IsEmpty)
        {
            return SerialDateReading.Silent;
        }

        Span<char> typed = serial.Length <= ShortSerial ? stackalloc char[serial.Length] : new char[serial.Length];
        serial.ToUpperInvariant(typed);
        BrandRules rules = Of(brand ?? "");
        foreach (SerialDateRule rule in rules.Rules)
        {
            if (rule.Read(typed, notAfter) is { } reading)
            {
                return reading;
            }
        }

        return rules.HasOwn ? SerialDateReading.Broken("the serial does not have the form of its brand") : SerialDateReading.Silent;
    }

    /// <summary>True when a rule names this brand, or one that it is a slip of. A rule for any brand does not count.</summary>
    /// <param name="brand">Brand as typed.</param>
    public bool Names(string? brand)
    {
        string key = CompactKey.From(brand);
        return key.Length > 0 && Array.Exists(_rules, r => r.Brand == key || IsSlip(key, r.Brand));
    }

    /// <summary>True when one brand may be the other with one letter missing, added, wrong, or swapped with the next.</summary>
    /// <param name="key">Letters and digits of one brand.</param>
    /// <param name="other">Letters and digits of the other. Short names differ by a letter too easily to tell.</param>
    public static bool IsSlip(string key, string other) =>
        key != other && other.Length >= ShortestMisspelled && StringDistance.OptimalAlignment(key, other, most: 1) == 1;

    private BrandRules Of(string brand)
    {
        if (_ofBrands.TryGetValue(brand, out BrandRules? known))
        {
            return known;
        }

        string key = CompactKey.From(brand);
        SerialDateRule[] rules = Array.FindAll(_rules, r => r.Brand.Length == 0 || r.Brand == key);
        var found = new BrandRules(rules, Array.Exists(rules, r => r.Brand.Length > 0));
        if (_ofBrands.Count < MostBrands)
        {
            _ofBrands.TryAdd(brand, found);
        }

        return found;
    }

    // The rules of a brand and those of any, in the order of the table.
    private sealed record BrandRules(SerialDateRule[] Rules, bool HasOwn);
}
