using System.Text.Json.Nodes;
using PartsSignal.Analysis.AgeCurves;

namespace PartsSignal.Analysis.Tests.AgeCurves;

/// <summary>Spans of small examples.</summary>
internal static class Spans
{
    /// <summary>Watched from new: an age and 1 for a failure, 0 for still working.</summary>
    public static AgeSpan[] FromNew(double[] ages, int[] causes) => [.. ages.Zip(causes, (a, c) => new AgeSpan(0, a, c))];

    /// <summary>Inputs of an oracle: time or entry/exit, with event or cause.</summary>
    public static AgeSpan[] Of(JsonNode inputs)
    {
        double[] exits = Oracle.Numbers(inputs["time"] ?? inputs["exit"]);
        int[] causes = Oracle.Wholes(inputs["event"] ?? inputs["cause"]);
        double[] entries = inputs["entry"] is { } e ? Oracle.Numbers(e) : new double[exits.Length];
        return [.. entries.Select((entry, i) => new AgeSpan(entry, exits[i], causes[i]))];
    }
}
