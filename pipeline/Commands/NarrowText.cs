namespace PartsSignal.Pipeline.Commands;

/// <summary>Plain text for a narrow screen: lines are broken at blanks, later lines of an item stand under its text.</summary>
internal sealed class NarrowText(TextWriter writer)
{
    /// <summary>Columns of a phone held upright.</summary>
    public const int Width = 46;

    /// <summary>A heading.</summary>
    public void Head(string text)
    {
        writer.WriteLine();
        writer.WriteLine(text.ToUpperInvariant());
    }

    /// <summary>A paragraph, broken to the width.</summary>
    /// <param name="text">The text.</param>
    /// <param name="first">What the first line begins with.</param>
    /// <param name="indent">Columns later lines are moved in.</param>
    public void Line(string text, string first = "", int indent = 0)
    {
        string line = first;
        bool empty = true;
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (!empty && line.Length + 1 + word.Length > Width)
            {
                writer.WriteLine(line.TrimEnd());
                line = new string(' ', indent);
                empty = true;
            }

            line += (empty ? "" : " ") + word;
            empty = false;
        }

        writer.WriteLine(line.TrimEnd());
    }
}
