using PartsSignal.Analysis.Prediction.MachineLearning;

namespace PartsSignal.Analysis.Prediction.ModelFiles;

/// <summary>Pipelines of the learning library as bytes: the back-off beside them, then per type its name and its archive behind the length.</summary>
internal static class LearnedPart
{
    public static void Write(BinaryWriter writer, LearnedPredictor predictor)
    {
        CountsPart.Write(writer, predictor.BackOff);
        writer.Write(predictor.ReadsBackOff);
        writer.Write(predictor.Types.Count);
        foreach ((string type, TypeLearner learner) in predictor.Types.OrderBy(t => t.Key, StringComparer.Ordinal))
        {
            byte[] archive = learner.ToArchive();
            writer.Write(type);
            writer.Write(archive.Length);
            writer.Write(archive);
        }
    }

    public static LearnedPredictor Read(BinaryReader reader)
    {
        BackOffModel backOff = CountsPart.Read(reader);
        bool readsBackOff = reader.ReadBoolean();
        var types = new SortedDictionary<string, TypeLearner>(StringComparer.Ordinal);
        for (int left = reader.ReadInt32(); left > 0; left--)
        {
            string type = reader.ReadString();
            types[type] = TypeLearner.FromArchive(reader.ReadBytes(reader.ReadInt32()), readsBackOff ? backOff.Needs.Count : 0);
        }

        return new LearnedPredictor(types, backOff, readsBackOff);
    }
}
