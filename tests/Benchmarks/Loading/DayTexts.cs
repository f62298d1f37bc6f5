using System.Globalization;
using System.Text;

namespace PartsSignal.Benchmarks.Loading;

/// <summary>Days of a log as text, and two months beyond.</summary>
internal sealed class DayTexts(DateOnly first, DateOnly last)
{
    /// <summary>Days a job may take.</summary>
    public const int Beyond = 60;

    private readonly byte[][] _days = [.. Enumerable.Range(0, last.DayNumber - first.DayNumber + 1 + Beyond)
        .Select(d => Encoding.ASCII.GetBytes(first.AddDays(d).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)))];

    /// <summary>The day so many days after the first.</summary>
    public ReadOnlySpan<byte> this[int day] => _days[day];
}
