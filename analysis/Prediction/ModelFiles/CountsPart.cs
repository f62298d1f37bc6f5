namespace PartsSignal.Analysis.Prediction.ModelFiles;

/// <summary>Back-off counts as bytes: per group only the needs that were counted.</summary>
internal static class CountsPart
{
    public static void Write(BinaryWriter writer, BackOffModel model)
    {
        StringTable.Write(writer, model.Needs);
        writer.Write(model.Levels.Count);
        foreach (BackOffCounts level in model.Levels)
        {
            writer.Write(level.Level.Name);
            writer.Write(level.Alpha);
            writer.Write(level.Groups.Count);
            foreach ((string key, int[] counts) in level.Groups.OrderBy(g => g.Key, StringComparer.Ordinal))
            {
                writer.Write(key);
                writer.Write7BitEncodedInt(counts.Count(n => n > 0));
                for (int k = 0; k < counts.Length; k++)
                {
                    if (counts[k] > 0)
                    {
                        writer.Write7BitEncodedInt(k);
                        writer.Write7BitEncodedInt(counts[k]);
                    }
                }
            }
        }
    }

    public static BackOffModel Read(BinaryReader reader)
    {
        string[] needs = StringTable.Read(reader);
        var levels = new BackOffCounts[reader.ReadInt32()];
        for (int l = 0; l < levels.Length; l++)
        {
            string name = reader.ReadString();
            BackOffLevel level = BackOffLevel.Every.FirstOrDefault(c => c.Name == name)
                ?? throw new InvalidDataException($"The model file names a level '{name}' this program does not know.");
            double alpha = reader.ReadDouble();
            levels[l] = new BackOffCounts(level, alpha, Groups(reader, needs.Length));
        }

        return new BackOffModel(needs, levels);
    }

    private static Dictionary<string, int[]> Groups(BinaryReader reader, int needs)
    {
        int count = reader.ReadInt32();
        var groups = new Dictionary<string, int[]>(count, StringComparer.Ordinal);
        for (int g = 0; g < count; g++)
        {
            string key = reader.ReadString();
            int[] counts = groups[key] = new int[needs];
            for (int left = reader.Read7BitEncodedInt(); left > 0; left--)
            {
                int k = reader.Read7BitEncodedInt();
                counts[k] = reader.Read7BitEncodedInt();
            }
        }

        return groups;
    }
}
