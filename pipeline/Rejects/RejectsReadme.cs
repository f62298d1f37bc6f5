using System.Globalization;
using System.Text;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Rejects;

/// <summary>The page next to the reject files: what they are, how to correct them, what the codes mean.</summary>
internal static class RejectsReadme
{
    /// <summary>Name of the page.</summary>
    public const string Name = "README.txt";

    /// <summary>Its text.</summary>
    /// <param name="days">Days that a file may stay.</param>
    public static string Text(int days = 90)
    {
        var text = new StringBuilder()
            .AppendLine("PRIVATE: these files hold rows as typed, including names and phone numbers. No other output does.")
            .AppendLine(CultureInfo.InvariantCulture, $"A file is removed by the first load after {days} days (rejectsDays in shop.json). It comes back when its source changes.")
            .AppendLine("Rows of customers who were forgotten are kept here without their cells.")
            .AppendLine()
            .AppendLine("Each source with refused rows has one file here. It has the source's own columns. Six columns follow:")
            .AppendLine("the line, the field, the reason, a message, a suggestion, and the row as typed. Part lines whose job is")
            .AppendLine("in no job log are in a second file. Lines that are not data, such as titles and totals, are kept here")
            .AppendLine("too (not_data). They are not refused rows and need no correction.")
            .AppendLine()
            .AppendLine("To load refused rows:")
            .AppendLine("  1. Open the file and correct the cells. Delete rows that are not data.")
            .Append("  2. Save it under the same name in the folder '").Append(RejectFile.MendedFolder).AppendLine("' inside your input folder.")
            .AppendLine("  3. Load again.")
            .AppendLine("A corrected row is loaded and counts as replacing the refused one. Leave the last columns as they are:")
            .AppendLine("they show which row you corrected. You can also correct the original file itself and load again.")
            .AppendLine()
            .Append("If a corrected row is refused again, correct it in the file in '").Append(RejectFile.MendedFolder).AppendLine("' and load again. Do not replace that file")
            .AppendLine("with the new one in this folder: the new one holds only the rows that are still refused. Its name ends in")
            .Append("'.again").Append(RejectFile.Ending).AppendLine("'; you may save it beside the other one instead.")
            .AppendLine()
            .AppendLine("Reasons:");
        foreach ((string code, string meaning) in ReasonCode.Meanings)
        {
            text.Append("  ").Append(code.PadRight(24)).AppendLine(meaning);
        }

        return text.ToString();
    }
}
