namespace PartsSignal.Analysis.Prediction.ModelFiles;

/// <summary>Set limits as bytes. A limit that is missing is written as -1.</summary>
internal static class LimitsPart
{
    public static void Write(BinaryWriter writer, CarryLimits limits)
    {
        writer.Write(limits.Promise);
        writer.Write(limits.Overall ?? -1);
        writer.Write(limits.Calls);
        writer.Write(limits.ByType.Count);
        foreach ((string type, double? limit) in limits.ByType.OrderBy(t => t.Key, StringComparer.Ordinal))
        {
            writer.Write(type);
            writer.Write(limit ?? -1);
        }
    }

    public static CarryLimits Read(BinaryReader reader)
    {
        double promise = reader.ReadDouble();
        double? overall = Limit(reader);
        int calls = reader.ReadInt32(), types = reader.ReadInt32();
        var byType = new Dictionary<string, double?>(StringComparer.Ordinal);
        for (int t = 0; t < types; t++)
        {
            byType[reader.ReadString()] = Limit(reader);
        }

        return new CarryLimits(promise, overall, byType, calls);
    }

    private static double? Limit(BinaryReader reader) => reader.ReadDouble() is >= 0 and var limit ? limit : null;
}
