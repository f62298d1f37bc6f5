using System.Text;
using PartsSignal.Analysis.Prediction.LogOdds;

namespace PartsSignal.Analysis.Prediction.ModelFiles;

/// <summary>
/// The model as bytes: a mark, a version, then the parts in a fixed order, numbers as they are in memory. What is read
/// back gives the same odds to the last digit.
/// </summary>
public static class ModelFile
{
    // An owner's last run must answer after an upgrade.
    private const int EarlierVersion = 2;

    private static readonly byte[] Mark = "PSMODEL\n"u8.ToArray();

    /// <summary>Writes a model.</summary>
    public static void Write(Stream stream, ShippedModel model)
    {
        using var writer = new BinaryWriter(stream, Encoding.UTF8, leaveOpen: true);
        writer.Write(Mark);
        writer.Write(ShippedModel.Version);
        writer.Write(model.Contender);
        writer.Write(model.LearnedTo?.DayNumber ?? -1);
        writer.Write(model.Jobs);
        writer.Write(model.Temperature);
        LimitsPart.Write(writer, model.Carry80);
        LimitsPart.Write(writer, model.Carry95);
        CountsPart.Write(writer, model.Counts);
        WritePredictor(writer, model.Predictor, model.Counts);
        writer.Write(model.Types is not null);
        if (model.Types is { } types)
        {
            writer.Write(types.Untyped);
            LogOddsPart.Write(writer, types.Types);
        }
    }

    /// <summary>Reads a model.</summary>
    /// <exception cref="InvalidDataException">Not a model file, cut short, or of another version.</exception>
    public static ShippedModel Read(Stream stream)
    {
        using var reader = new BinaryReader(stream, Encoding.UTF8, leaveOpen: true);
        try
        {
            if (!reader.ReadBytes(Mark.Length).AsSpan().SequenceEqual(Mark))
            {
                throw new InvalidDataException("This is no model file.");
            }

            int version = reader.ReadInt32();
            return version is ShippedModel.Version or EarlierVersion
                ? ReadParts(reader, version)
                : throw new InvalidDataException($"The model file has version {version}; this program reads {ShippedModel.Version}. Run 'run' again.");
        }
        catch (EndOfStreamException cut)
        {
            throw new InvalidDataException("The model file is cut short. Run 'run' again.", cut);
        }
    }

    private static ShippedModel ReadParts(BinaryReader reader, int version)
    {
        string contender = reader.ReadString();
        int day = reader.ReadInt32(), jobs = reader.ReadInt32();
        double temperature = reader.ReadDouble();
        Func<BinaryReader, CarryLimits> limits = version == EarlierVersion ? LimitsPart.ReadVersion2 : LimitsPart.Read;
        CarryLimits carry80 = limits(reader), carry95 = limits(reader);
        BackOffModel counts = CountsPart.Read(reader);
        IPredictor predictor = ReadPredictor(reader, counts);
        TypeReader? types = version > EarlierVersion && reader.ReadBoolean() ? ReadTypes(reader) : null;
        return new ShippedModel
        {
            Contender = contender,
            LearnedTo = day < 0 ? null : DateOnly.FromDayNumber(day),
            Jobs = jobs,
            Temperature = temperature,
            Carry80 = carry80,
            Carry95 = carry95,
            Counts = counts,
            Predictor = predictor,
            Types = types,
        };
    }

    private static TypeReader ReadTypes(BinaryReader reader)
    {
        int untyped = reader.ReadInt32();
        return new TypeReader(LogOddsPart.Read(reader), untyped);
    }

    private static void WritePredictor(BinaryWriter writer, IPredictor predictor, BackOffModel counts)
    {
        switch (predictor)
        {
            case LogOddsModel sums:
                writer.Write((byte)PredictorKind.LogOdds);
                LogOddsPart.Write(writer, sums);
                break;
            case BackOffModel same when ReferenceEquals(same, counts):
                writer.Write((byte)PredictorKind.Counts);
                break;
            case BackOffModel other:
                writer.Write((byte)PredictorKind.OtherCounts);
                CountsPart.Write(writer, other);
                break;
            case StackedPredictor stack:
                writer.Write((byte)PredictorKind.Stack);
                StringTable.Write(writer, [.. stack.Weights]);
                foreach (IPredictor member in stack.Members)
                {
                    WritePredictor(writer, member, counts);
                }

                break;
            default:
                throw new ArgumentException($"A {predictor.GetType().Name} has no file form.", nameof(predictor));
        }
    }

    private static IPredictor ReadPredictor(BinaryReader reader, BackOffModel counts) => (PredictorKind)reader.ReadByte() switch
    {
        PredictorKind.LogOdds => LogOddsPart.Read(reader),
        PredictorKind.Retired => throw new InvalidDataException("The model file holds a kind of predictor that is no longer in use. Run 'run' again."),
        PredictorKind.Counts => counts,
        PredictorKind.OtherCounts => CountsPart.Read(reader),
        PredictorKind.Stack => ReadStack(reader, counts),
        _ => throw new InvalidDataException("The model file names a predictor this program does not know."),
    };

    private static StackedPredictor ReadStack(BinaryReader reader, BackOffModel counts)
    {
        double[] weights = StringTable.ReadNumbers(reader);
        return new StackedPredictor([.. weights.Select(_ => ReadPredictor(reader, counts))], weights);
    }

    private enum PredictorKind : byte
    {
        LogOdds = 1,
        Retired = 2,
        Counts = 3,
        OtherCounts = 4,
        Stack = 5,
    }
}
