using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Staging;

/// <summary>Job logs that do not say when the customer called.</summary>
internal static class StandInColumns
{
    /// <summary>Whether a map gives a closing day but no day of the call, so that the one counts for the other.</summary>
    public static bool HasNoCallDay(SourceMap map) =>
        map.Kind == "jobs" && map.Columns.ContainsKey("closed_on") && !map.Columns.ContainsKey("opened_on") && !map.Fixed.ContainsKey("opened_on");

    /// <summary>What is assumed for them, or null if there are none.</summary>
    public static string? Sentence(IReadOnlyList<SourceFile> sources)
    {
        string[] files = [.. sources.Where(s => HasNoCallDay(s.Map)).Select(s => s.File.Name).Distinct(StringComparer.Ordinal)];
        return files.Length == 0 ? null : $"No column of {string.Join(", ", files)} holds the day the customer called, so the closing day is used instead.";
    }
}
