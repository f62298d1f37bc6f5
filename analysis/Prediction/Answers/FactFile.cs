using System.Text;

namespace PartsSignal.Analysis.Prediction.Answers;

/// <summary>
/// The facts as bytes, so that an answer need not open the database engine: a mark with the version of the form, the
/// lists in a fixed order, a mark at the end. What is read back is what was written, row by row.
/// </summary>
public static class FactFile
{
    private static readonly byte[] Mark = "PSFACTS2"u8.ToArray();

    /// <summary>Writes facts.</summary>
    public static void Write(Stream stream, StoreFacts facts)
    {
        using var writer = new BinaryWriter(stream, Encoding.UTF8, leaveOpen: true);
        writer.Write(Mark);
        List(writer, facts.Parts, Part);
        List(writer, facts.ModelParts, static (w, m) =>
        {
            w.Write(m.Model);
            w.Write(m.Part);
            w.Write(m.Jobs);
        });
        List(writer, facts.Companions, Companion);
        List(writer, facts.Vans, static (w, v) =>
        {
            w.Write(v.PartNumber);
            w.Write(v.Van);
            w.Write(v.OnHand);
            w.Write(v.CountedOn?.DayNumber ?? -1);
        });
        List(writer, facts.Models, static (w, m) =>
        {
            w.Write(m.ModelNumber);
            w.Write(m.ModelFamily);
            Text(w, m.ApplianceType);
            Text(w, m.Brand);
        });
        List(writer, facts.Risks, Risk);
        List(writer, facts.Languages, static (w, l) => w.Write(l));
        List(writer, facts.OwnWords, static (w, o) =>
        {
            w.Write(o.ComplaintKind);
            w.Write(o.Words);
        });
        writer.Write(Mark);
    }

    /// <summary>Reads facts, or null if these bytes are no such file, are cut short, or are of another version.</summary>
    public static StoreFacts? Read(Stream stream)
    {
        using var reader = new BinaryReader(stream, Encoding.UTF8, leaveOpen: true);
        try
        {
            if (!AtMark(reader))
            {
                return null;
            }

            var facts = new StoreFacts(
                List(reader, Part),
                List(reader, static r => (r.ReadString(), r.ReadString(), r.ReadInt64())),
                List(reader, static r => new Companion(
                    r.ReadString(), r.ReadString(), r.ReadString(), r.ReadInt64(), r.ReadInt64(), r.ReadDouble(), r.ReadDouble())),
                List(reader, static r => new VanPart(r.ReadString(), r.ReadString(), r.ReadInt32(), Day(r.ReadInt32()))),
                List(reader, static r => new KnownModel(r.ReadString(), r.ReadString(), Text(r), Text(r))),
                List(reader, static r => new YearRisk(
                    r.ReadString(), r.ReadString(), r.ReadString(), r.ReadString(), r.ReadInt32(), r.ReadDouble(), r.ReadInt64())))
            {
                Languages = List(reader, static r => r.ReadString()),
                OwnWords = List(reader, static r => new OwnComplaintWords(r.ReadString(), r.ReadString())),
            };
            return AtMark(reader) ? facts : null;
        }
        catch (Exception damaged) when (damaged is IOException or FormatException or ArgumentException or OverflowException)
        {
            return null;
        }
    }

    private static bool AtMark(BinaryReader reader) => reader.ReadBytes(Mark.Length).AsSpan().SequenceEqual(Mark);

    private static void Part(BinaryWriter writer, (string Family, FamilyPart Part) row)
    {
        writer.Write(row.Family);
        writer.Write(row.Part.Component);
        writer.Write(row.Part.PartNumber);
        Text(writer, row.Part.Description);
        writer.Write(row.Part.TimesSeen);
        writer.Write(row.Part.Listed);
        writer.Write(row.Part.Quantity);
        writer.Write(row.Part.Price is not null);
        writer.Write(row.Part.Price ?? 0);
        writer.Write(row.Part.ReturnableDays is not null);
        writer.Write(row.Part.ReturnableDays ?? 0);
        writer.Write(row.Part.Available);
    }

    private static (string Family, FamilyPart Part) Part(BinaryReader reader) => (reader.ReadString(), new FamilyPart
    {
        Component = reader.ReadString(),
        PartNumber = reader.ReadString(),
        Description = Text(reader),
        TimesSeen = reader.ReadInt64(),
        Listed = reader.ReadBoolean(),
        Quantity = reader.ReadInt32(),
        Price = Given(reader.ReadBoolean(), reader.ReadDecimal()),
        ReturnableDays = Given(reader.ReadBoolean(), reader.ReadInt32()),
        Available = reader.ReadBoolean(),
    });

    private static void Companion(BinaryWriter writer, Companion row)
    {
        writer.Write(row.ApplianceType);
        writer.Write(row.Component);
        writer.Write(row.With);
        writer.Write(row.JobsComponent);
        writer.Write(row.JobsBoth);
        writer.Write(row.Share);
        writer.Write(row.Lift);
    }

    private static void Risk(BinaryWriter writer, YearRisk row)
    {
        writer.Write(row.Basis);
        writer.Write(row.ApplianceType);
        writer.Write(row.ModelFamily);
        writer.Write(row.Component);
        writer.Write(row.AgeYears);
        writer.Write(row.Chance);
        writer.Write(row.Events);
    }

    private static void List<T>(BinaryWriter writer, IReadOnlyList<T> rows, Action<BinaryWriter, T> write)
    {
        writer.Write(rows.Count);
        foreach (T row in rows)
        {
            write(writer, row);
        }
    }

    // A damaged count must not claim memory for rows that are not there.
    private static List<T> List<T>(BinaryReader reader, Func<BinaryReader, T> read)
    {
        int count = reader.ReadInt32();
        var rows = new List<T>(Math.Clamp(count, 0, 1 << 16));
        for (int i = 0; i < count; i++)
        {
            rows.Add(read(reader));
        }

        return rows;
    }

    private static void Text(BinaryWriter writer, string? text)
    {
        writer.Write(text is not null);
        writer.Write(text ?? "");
    }

    private static string? Text(BinaryReader reader)
    {
        bool given = reader.ReadBoolean();
        string text = reader.ReadString();
        return given ? text : null;
    }

    private static T? Given<T>(bool given, T value)
        where T : struct => given ? value : null;

    private static DateOnly? Day(int number) => number < 0 ? null : DateOnly.FromDayNumber(number);
}
