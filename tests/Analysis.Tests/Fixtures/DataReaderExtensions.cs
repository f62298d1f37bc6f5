using System.Data.Common;
using System.Globalization;

namespace PartsSignal.Analysis.Tests.Fixtures;

/// <summary>Nullable reads by position.</summary>
internal static class DataReaderExtensions
{
    /// <summary>Text, or null.</summary>
    public static string? Text(this DbDataReader reader, int i) => reader.IsDBNull(i) ? null : reader.GetString(i);

    /// <summary>Whole number of any width, or null.</summary>
    public static long? Long(this DbDataReader reader, int i) =>
        reader.IsDBNull(i) ? null : Convert.ToInt64(reader.GetValue(i), CultureInfo.InvariantCulture);

    /// <summary>Whole number that is never null.</summary>
    public static int Int(this DbDataReader reader, int i) => Convert.ToInt32(reader.GetValue(i), CultureInfo.InvariantCulture);

    /// <summary>Floating number of any source type, or null.</summary>
    public static double? Double(this DbDataReader reader, int i) =>
        reader.IsDBNull(i) ? null : Convert.ToDouble(reader.GetValue(i), CultureInfo.InvariantCulture);

    /// <summary>Money, or null.</summary>
    public static decimal? Money(this DbDataReader reader, int i) => reader.IsDBNull(i) ? null : reader.GetDecimal(i);

    /// <summary>Day, or null.</summary>
    public static DateOnly? Day(this DbDataReader reader, int i) => reader.IsDBNull(i) ? null : reader.GetFieldValue<DateOnly>(i);

    /// <summary>Yes or no, or null.</summary>
    public static bool? Flag(this DbDataReader reader, int i) => reader.IsDBNull(i) ? null : reader.GetBoolean(i);
}
