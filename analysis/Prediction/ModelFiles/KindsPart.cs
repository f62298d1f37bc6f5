using PartsSignal.Analysis.Prediction.LogOdds;

namespace PartsSignal.Analysis.Prediction.ModelFiles;

/// <summary>The second reading of complaints as bytes.</summary>
internal static class KindsPart
{
    public static void Write(BinaryWriter writer, LearnedComplaintReader kinds)
    {
        StringTable.Write(writer, kinds.Words.Words);
        StringTable.Write(writer, kinds.Kinds);
        foreach (int jobs in kinds.Jobs)
        {
            writer.Write7BitEncodedInt(jobs);
        }

        writer.Write(kinds.Counts.Count);
        foreach ((string stem, int[] counts) in kinds.Counts.OrderBy(c => c.Key, StringComparer.Ordinal))
        {
            writer.Write(stem);
            foreach (int count in counts)
            {
                writer.Write7BitEncodedInt(count);
            }
        }
    }

    public static LearnedComplaintReader Read(BinaryReader reader)
    {
        var words = new WordList(StringTable.Read(reader));
        string[] kinds = StringTable.Read(reader);
        int[] jobs = Wholes(reader, kinds.Length);
        var counts = new SortedDictionary<string, int[]>(StringComparer.Ordinal);
        for (int stems = reader.ReadInt32(); stems > 0; stems--)
        {
            counts[reader.ReadString()] = Wholes(reader, kinds.Length);
        }

        return new LearnedComplaintReader(words, kinds, jobs, counts);
    }

    private static int[] Wholes(BinaryReader reader, int length)
    {
        var wholes = new int[length];
        for (int i = 0; i < length; i++)
        {
            wholes[i] = reader.Read7BitEncodedInt();
        }

        return wholes;
    }
}
