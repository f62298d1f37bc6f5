using System.Text;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Rejects;

/// <summary>The page that lies beside the rejects: what they are, how to mend them, what the codes mean.</summary>
public static class RejectsReadme
{
    /// <summary>Name of the page.</summary>
    public const string Name = "README.txt";

    /// <summary>Its text.</summary>
    public static string Text()
    {
        var text = new StringBuilder()
            .AppendLine("PRIVATE: these files hold rows as they were, with names and numbers. Nothing else in the output does.")
            .AppendLine()
            .AppendLine("One file a source, with the source's own columns and behind them the line, the field, the reason,")
            .AppendLine("a message, a suggestion and the raw row; part lines whose job is in no log stand in a second one.")
            .AppendLine("To mend rows: correct the cells, leave out rows that are no")
            .Append("data, save the file under the same name in the input folder's '").Append(RejectFile.MendedFolder).AppendLine("' folder, and load again.")
            .AppendLine("The original keeps its rejects in the books; the mended rows are loaded as a file of their own.")
            .AppendLine()
            .AppendLine("Reasons:");
        foreach ((string code, string meaning) in ReasonCode.Meanings)
        {
            text.Append("  ").Append(code.PadRight(24)).AppendLine(meaning);
        }

        return text.ToString();
    }
}
