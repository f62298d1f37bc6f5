namespace PartsSignal.Analysis.Prediction.ModelFiles;

/// <summary>Lists of texts and numbers as bytes.</summary>
internal static class StringTable
{
    public static void Write(BinaryWriter writer, IReadOnlyCollection<string> texts)
    {
        writer.Write(texts.Count);
        foreach (string text in texts)
        {
            writer.Write(text);
        }
    }

    public static string[] Read(BinaryReader reader)
    {
        var texts = new string[reader.ReadInt32()];
        for (int i = 0; i < texts.Length; i++)
        {
            texts[i] = reader.ReadString();
        }

        return texts;
    }

    public static void Write(BinaryWriter writer, IReadOnlyCollection<double> numbers)
    {
        writer.Write(numbers.Count);
        foreach (double number in numbers)
        {
            writer.Write(number);
        }
    }

    public static double[] ReadNumbers(BinaryReader reader)
    {
        var numbers = new double[reader.ReadInt32()];
        for (int i = 0; i < numbers.Length; i++)
        {
            numbers[i] = reader.ReadDouble();
        }

        return numbers;
    }
}
