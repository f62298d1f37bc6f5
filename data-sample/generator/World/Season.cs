namespace PartsSignal.SampleShop.World;

/// <summary>How fast life goes by on each day: refrigerators age faster in the heat, dryers in the cold wet months, screens clog after mains works.</summary>
internal sealed class Season
{
    private readonly double[] _speed;
    private readonly double[] _used;

    private Season(Func<int, double> speed)
    {
        int days = ShopCalendar.AsOf + 2;
        _speed = new double[days];
        _used = new double[days + 1];
        for (int day = 0; day < days; day++)
        {
            _speed[day] = speed(day);
            _used[day + 1] = _used[day] + (_speed[day] / ShopCalendar.DaysPerYear);
        }
    }

    public static Season Flat { get; } = new(_ => 1);

    public static Season Heat { get; } = new(day => Swing(day, 202, 0.45));

    public static Season Cold { get; } = new(day => Swing(day, 10, 0.40));

    /// <summary>Works on the water mains in two springs loosen what then clogs the screens.</summary>
    public static Season Mains { get; } = new(day =>
        IsWithin(day, ShopCalendar.Day(2023, 4, 10), 75) || IsWithin(day, ShopCalendar.Day(2025, 9, 1), 90) ? 2.8 : 0.9);

    public static Season Named(string name) => name switch
    {
        "flat" => Flat,
        "heat" => Heat,
        "cold" => Cold,
        "mains" => Mains,
        _ => throw new ArgumentException($"no season {name}", nameof(name)),
    };

    public double Speed(int day) => _speed[day];

    /// <summary>Years of life used up from the origin to the morning of a day.</summary>
    public double UsedBy(int day) => _used[day];

    /// <summary>Day by whose end a unit that starts on <paramref name="start"/> has lived so many years at a pace; int.MaxValue: after the last day.</summary>
    public int DayAfter(int start, double years, double pace)
    {
        double target = _used[start] + (years / pace);
        if (target >= _used[^1])
        {
            return int.MaxValue;
        }

        int at = Array.BinarySearch(_used, target);
        int day = at >= 0 ? at : ~at - 1;
        return Math.Max(day, start);
    }

    private static double Swing(int day, int peakDayOfYear, double size)
    {
        // a parabola pair stands in for the cosine: basic operations only, so the days repeat on every machine
        double phase = ((ShopCalendar.Date(day).DayOfYear - peakDayOfYear) / ShopCalendar.DaysPerYear) + 1.25;
        phase -= Math.Floor(phase);
        double wave = phase < 0.5 ? 16 * phase * (0.5 - phase) : -16 * (phase - 0.5) * (1 - phase);
        return 1 + (size * wave);
    }

    private static bool IsWithin(int day, int from, int length) => day >= from && day < from + length;
}
