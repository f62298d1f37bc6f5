using PartsSignal.Analysis.PartPrediction.BackOff;
using PartsSignal.Analysis.PartPrediction.MachineLearning;

namespace PartsSignal.Analysis.PartPrediction.ModelFiles;

/// <summary>A pipeline of the learning library as bytes: its own archive, behind its length, then the back-off it stands on.</summary>
internal static class LearnedPart
{
    public static void Write(BinaryWriter writer, LearnedPredictor predictor)
    {
        byte[] archive = predictor.ToArchive();
        writer.Write(archive.Length);
        writer.Write(archive);
        writer.Write(predictor.BackOff is not null);
        if (predictor.BackOff is { } backOff)
        {
            CountsPart.Write(writer, backOff);
        }
    }

    public static LearnedPredictor Read(BinaryReader reader)
    {
        byte[] archive = reader.ReadBytes(reader.ReadInt32());
        BackOffModel? backOff = reader.ReadBoolean() ? CountsPart.Read(reader) : null;
        return LearnedPredictor.FromArchive(archive, backOff);
    }
}
