using System.Text;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>The month as plain text, to be pasted into a message.</summary>
internal static class SummaryText
{
    private const int Width = 76;

    /// <summary>The text: a heading, the sentences, and where the rest is.</summary>
    public static string Render(MonthlyReport report)
    {
        var text = new StringBuilder();
        text.Append(report.Shop).Append(", ").Append(Format.Month(report.Month)).Append('\n');
        text.Append("As known on ").Append(Format.Day(report.AsOf)).Append("; intervals are 95 % intervals.\n");
        for (int i = 0; i < report.Sentences.Count; i++)
        {
            text.Append('\n');
            Wrap(text, $"{i + 1}. ", report.Sentences[i]);
        }

        return text.Replace('\u00A0', ' ').ToString();
    }

    private static void Wrap(StringBuilder text, string lead, string sentence)
    {
        string indent = new(' ', lead.Length);
        var line = new StringBuilder(lead);
        foreach (string word in sentence.Split([' ', '\n', '\r', '\t'], StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > lead.Length && line.Length + 1 + word.Length > Width)
            {
                text.Append(line).Append('\n');
                line.Clear().Append(indent);
            }

            line.Append(line.Length > lead.Length ? " " : "").Append(word);
        }

        text.Append(line).Append('\n');
    }
}
