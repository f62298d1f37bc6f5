using System.Text;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Rejects;

/// <summary>The page next to the reject files: what they are, how to correct them, what the codes mean.</summary>
internal static class RejectsReadme
{
    /// <summary>Name of the page.</summary>
    public const string Name = "README.txt";

    /// <summary>Its text.</summary>
    public static string Text()
    {
        var text = new StringBuilder()
            .AppendLine("PRIVATE: these files hold rows as typed, including names and phone numbers. No other output does.")
            .AppendLine()
            .AppendLine("There is one file per source. It has the source's own columns, followed by the line, the field, the")
            .AppendLine("reason, a message, a suggestion and the row as typed. Part lines whose job is in no job log are in a")
            .AppendLine("second file. Lines that are not data, such as titles and totals, are kept here too (not_data). They are")
            .AppendLine("not refused rows and need no correction.")
            .AppendLine()
            .AppendLine("To use refused rows: correct the cells, delete rows that are not data, save the file under the same")
            .Append("name in the folder '").Append(RejectFile.MendedFolder).AppendLine("' inside your input folder, and load again. The rows of the original file still")
            .AppendLine("count as refused; the corrected rows are loaded as a separate file.")
            .AppendLine()
            .AppendLine("Reasons:");
        foreach ((string code, string meaning) in ReasonCode.Meanings)
        {
            text.Append("  ").Append(code.PadRight(24)).AppendLine(meaning);
        }

        return text.ToString();
    }
}
