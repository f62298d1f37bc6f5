using System.Globalization;

namespace PartsSignal.Analysis.CrossReference;

/// <summary>A serial number together with what else is known of when the appliance was built. One per appliance.</summary>
/// <param name="Brand">Brand as typed; empty: unknown.</param>
/// <param name="Serial">Serial, compact: capitals and digits alone.</param>
/// <param name="Built">First and last possible build day, or null if not told.</param>
/// <param name="StartedOn">Day it was bought or installed, or null if not told. It was built before.</param>
public sealed record DatedSerial(string Brand, string Serial, BuildInterval? Built, DateOnly? StartedOn);

/// <summary>What the dates of other serials say for and against a reading.</summary>
internal sealed class DateEvidence
{
    /// <summary>Longest plausible time from the factory to the customer.</summary>
    public const int MostDaysInStock = 1461;

    // Slack of a build date that was told: a plant's week may begin on another day.
    private const int Slack = 7;
    private const double Floor = 1e-4;

    // Appliances are mostly sold within months: an exponential time in stock with this mean, cut off at its longest.
    private const double MeanDaysInStock = 365;
    private static readonly double Mass = 1 - Math.Exp(-MostDaysInStock / MeanDaysInStock);
    private readonly DatedSerial _told;
    private readonly int _from;
    private readonly int _to;
    private readonly bool _built;

    public DateEvidence(DatedSerial told)
    {
        _told = told;
        _built = told.Built is not null;
        (_from, _to) = told.Built is { } built ? (built.From.DayNumber - Slack, built.To.DayNumber + Slack) : (told.StartedOn!.Value.DayNumber - MostDaysInStock, told.StartedOn!.Value.DayNumber);
    }

    public string Serial => _told.Serial;

    /// <summary>What is known of its date, in words.</summary>
    public string Description => _told.Built is { } built
        ? string.Create(CultureInfo.InvariantCulture, $"built between {built.From:yyyy-MM-dd} and {built.To:yyyy-MM-dd}")
        : string.Create(CultureInfo.InvariantCulture, $"in use since {_told.StartedOn:yyyy-MM-dd}");

    /// <summary>Year of the last possible build day.</summary>
    public int LastYear => DateOnly.FromDayNumber(_to).Year;

    /// <summary>Year of the first possible build day.</summary>
    public int FirstYear => DateOnly.FromDayNumber(_from).Year;

    /// <summary>True when the appliance may have been built then and was in stock for no longer than so many days.</summary>
    public bool Fits(DaySpan days, int stock = MostDaysInStock) => days.From <= _to && days.To >= (_built ? _from : _to - stock);

    /// <summary>Probability that it was built then; never 0, so that one slip does not decide alone.</summary>
    public double Chance(DaySpan days)
    {
        int from = Math.Max(days.From, _from), to = Math.Min(days.To, _to);
        return from > to ? Floor
            : _built ? Math.Max(Floor, (to - from + 1.0) / (_to - _from + 1))
            : Math.Max(Floor, (Math.Exp((to - _to) / MeanDaysInStock) - Math.Exp((from - 1 - _to) / MeanDaysInStock)) / Mass);
    }
}

/// <summary>Days by number, both ends inside.</summary>
internal readonly record struct DaySpan(int From, int To)
{
    public static DaySpan Of(BuildInterval interval) => new(interval.From.DayNumber, interval.To.DayNumber);
}
