using PartsSignal.Analysis.Prediction.LogOdds;

namespace PartsSignal.Analysis.Prediction.ModelFiles;

/// <summary>A table of log odds as bytes.</summary>
internal static class LogOddsPart
{
    public static void Write(BinaryWriter writer, LogOddsModel model)
    {
        StringTable.Write(writer, model.Needs);
        KindsPart.Write(writer, model.Shape.Kinds);
        writer.Write(model.Shape.Allowed.Count);
        foreach ((string type, int[] allowed) in model.Shape.Allowed.OrderBy(a => a.Key, StringComparer.Ordinal))
        {
            writer.Write(type);
            writer.Write(allowed.Length);
            foreach (int k in allowed)
            {
                writer.Write(k);
            }
        }

        writer.Write(model.Shape.Space.Count);
        foreach ((string key, FeatureGroup group) in model.Shape.Space.Features)
        {
            writer.Write(key);
            writer.Write((byte)group);
        }

        StringTable.Write(writer, model.Weights);
        StringTable.Write(writer, model.Background);
        StringTable.Write(writer, model.Spreads);
    }

    public static LogOddsModel Read(BinaryReader reader)
    {
        string[] needs = StringTable.Read(reader);
        LearnedComplaintReader kinds = KindsPart.Read(reader);
        var allowed = new Dictionary<string, int[]>(StringComparer.Ordinal);
        for (int types = reader.ReadInt32(); types > 0; types--)
        {
            string type = reader.ReadString();
            int[] places = allowed[type] = new int[reader.ReadInt32()];
            for (int a = 0; a < places.Length; a++)
            {
                places[a] = reader.ReadInt32();
            }
        }

        var space = new FeatureSpace();
        for (int facts = reader.ReadInt32(); facts > 0; facts--)
        {
            space.Add(reader.ReadString(), (FeatureGroup)reader.ReadByte());
        }

        double[] weights = StringTable.ReadNumbers(reader), background = StringTable.ReadNumbers(reader), spreads = StringTable.ReadNumbers(reader);
        return new LogOddsModel(new LogOddsShape(needs, space, kinds, allowed), weights, background, spreads);
    }
}
