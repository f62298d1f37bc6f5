namespace PartsSignal.Analysis.CrossReference.SerialDates;

/// <summary>All rules of the shop's table.</summary>
public sealed class SerialDateRules
{
    /// <summary>No rules: every serial is silent.</summary>
    public static readonly SerialDateRules None = new([]);

    private const int ShortSerial = 64;
    private readonly SerialDateRule[] _rules;

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

        string brandKey = CompactKey.Of(brand);
        Span<char> typed = serial.Length <= ShortSerial ? stackalloc char[serial.Length] : new char[serial.Length];
        serial.ToUpperInvariant(typed);

        bool ruled = false;
        foreach (SerialDateRule rule in _rules)
        {
            if (rule.Brand.Length > 0 && rule.Brand != brandKey)
            {
                continue;
            }

            ruled |= rule.Brand.Length > 0;
            if (rule.Read(typed, notAfter) is { } reading)
            {
                return reading;
            }
        }

        return ruled ? SerialDateReading.Broken("the serial does not have the form of its brand") : SerialDateReading.Silent;
    }
}
