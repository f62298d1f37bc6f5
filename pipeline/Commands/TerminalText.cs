using System.Text;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Sentences for a terminal of eighty columns.</summary>
internal static class TerminalText
{
    private const int Width = 78;

    /// <summary>Writes a text, broken at blanks; later lines are indented.</summary>
    public static void Write(TextWriter writer, string text)
    {
        var line = new StringBuilder();
        foreach (string word in text.Split(' '))
        {
            if (line.Length + word.Length > Width)
            {
                writer.WriteLine(line.ToString().TrimEnd());
                line.Clear().Append("  ");
            }

            line.Append(word).Append(' ');
        }

        writer.WriteLine(line.ToString().TrimEnd());
    }
}
