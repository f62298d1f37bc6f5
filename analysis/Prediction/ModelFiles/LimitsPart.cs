namespace PartsSignal.Analysis.Prediction.ModelFiles;

/// <summary>Set thresholds as bytes.</summary>
internal static class LimitsPart
{
    public static void Write(BinaryWriter writer, CarryLimits limits)
    {
        writer.Write(limits.Promise);
        writer.Write(limits.Overall);
        writer.Write(limits.Calls);
        Write(writer, limits.ByKind);
        Write(writer, limits.ByCell);
    }

    public static CarryLimits Read(BinaryReader reader)
    {
        double promise = reader.ReadDouble(), overall = reader.ReadDouble();
        int calls = reader.ReadInt32();
        return new CarryLimits(promise, overall, Thresholds(reader), Thresholds(reader), calls);
    }

    /// <summary>Skips the limits of version 2, which were limits of something else; its sets are wide.</summary>
    public static CarryLimits ReadVersion2(BinaryReader reader)
    {
        double promise = reader.ReadDouble();
        reader.ReadDouble();
        reader.ReadInt32();
        Thresholds(reader);
        return CarryLimits.Fit([], promise);
    }

    private static void Write(BinaryWriter writer, IReadOnlyDictionary<string, double> thresholds)
    {
        writer.Write(thresholds.Count);
        foreach ((string key, double threshold) in thresholds.OrderBy(t => t.Key, StringComparer.Ordinal))
        {
            writer.Write(key);
            writer.Write(threshold);
        }
    }

    private static Dictionary<string, double> Thresholds(BinaryReader reader)
    {
        var thresholds = new Dictionary<string, double>(StringComparer.Ordinal);
        for (int left = reader.ReadInt32(); left > 0; left--)
        {
            thresholds[reader.ReadString()] = reader.ReadDouble();
        }

        return thresholds;
    }
}
