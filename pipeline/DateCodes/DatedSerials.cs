using PartsSignal.Analysis.CrossReference;

namespace PartsSignal.Pipeline.DateCodes;

/// <summary>
/// Serials together with what their rows say of the build date, each appliance once. They are never written anywhere: only
/// the rules that they prove are.
/// </summary>
internal sealed class DatedSerials
{
    // More appliances of one brand and length prove nothing further.
    private const int MostAlike = 20_000;
    private const int LongestSerial = 40;

    // A brand is a misspelling of another that comes so many times as often.
    private const int SlipsPerBrand = 10;
    private readonly Dictionary<string, Dated> _byAppliance = new(StringComparer.Ordinal);
    private readonly Dictionary<(string Brand, int Length), int> _alike = [];

    /// <summary>
    /// All of them, in the order in which they were first met, without those whose rows contradict each other and those of
    /// misspelled brands, which would teach the same rule again from a handful.
    /// </summary>
    public IEnumerable<DatedSerial> All
    {
        get
        {
            Dictionary<string, int> brands = _byAppliance.Values.CountBy(d => d.BrandKey, StringComparer.Ordinal).ToDictionary(StringComparer.Ordinal);
            var misspelled = brands.Where(b => brands.Any(o => o.Value >= SlipsPerBrand * b.Value && SerialDateRules.IsSlip(b.Key, o.Key))).Select(b => b.Key).ToHashSet(StringComparer.Ordinal);
            return _byAppliance.Values.Where(d => !misspelled.Contains(d.BrandKey)).Select(d => d.Evidence()).OfType<DatedSerial>();
        }
    }

    /// <summary>Takes what one row says. What several rows say of one appliance is put together.</summary>
    /// <param name="brand">Brand as typed.</param>
    /// <param name="serial">Serial as typed.</param>
    /// <param name="date">What the row says of its date.</param>
    public void Add(string brand, ReadOnlySpan<char> serial, RowDate date)
    {
        if (date.IsEmpty || serial.Length > LongestSerial)
        {
            return;
        }

        Span<char> compact = stackalloc char[LongestSerial];
        string number = compact[..CompactKey.From(serial, compact)].ToString();
        (string Brand, int Length) group = (CompactKey.From(brand), number.Length);
        if (group.Length == 0 || group.Brand.Length == 0)
        {
            return;
        }

        string key = $"{group.Brand}/{number}";
        if (_byAppliance.TryGetValue(key, out Dated? known))
        {
            known.Add(date);
            return;
        }

        int alike = _alike.GetValueOrDefault(group);
        if (alike < MostAlike)
        {
            _alike[group] = alike + 1;
            _byAppliance.Add(key, new Dated(brand, group.Brand, number, date));
        }
    }

    private sealed class Dated(string brand, string brandKey, string serial, RowDate date)
    {
        private BuildInterval? _built = date.Built;
        private BuildInterval? _aged = date.Aged;
        private DateOnly? _started = date.StartedOn;
        private bool _contradicts;

        public string BrandKey => brandKey;

        public void Add(RowDate date)
        {
            _started = _started is null || date.StartedOn < _started ? date.StartedOn ?? _started : _started;
            _built = Both(_built, date.Built);
            _aged = Both(_aged, date.Aged);
        }

        // Ages are told by customers: they count only where no date is known.
        public DatedSerial? Evidence() => _contradicts ? null : new DatedSerial(brand, serial, _built ?? (_started is null ? _aged : null), _started);

        private BuildInterval? Both(BuildInterval? one, BuildInterval? other)
        {
            if (one is null || other is null)
            {
                return one ?? other;
            }

            DateOnly from = one.From > other.From ? one.From : other.From, to = one.To < other.To ? one.To : other.To;
            _contradicts |= from > to;
            return from > to ? one : new BuildInterval(from, to);
        }
    }
}

/// <summary>What one row says of the day an appliance was built.</summary>
/// <param name="Built">A build date or year, or null if not told.</param>
/// <param name="StartedOn">Day it was bought or installed, or null if not told.</param>
/// <param name="Aged">Build days that a stated age leaves open, or null if no age was told.</param>
internal readonly record struct RowDate(BuildInterval? Built, DateOnly? StartedOn, BuildInterval? Aged)
{
    /// <summary>True when the row says nothing.</summary>
    public bool IsEmpty => Built is null && StartedOn is null && Aged is null;
}
