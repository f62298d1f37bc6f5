using System.Text;

namespace PartsSignal.Pipeline.Review;

/// <summary>The page next to the review lists: how to answer them.</summary>
internal static class ReviewReadme
{
    /// <summary>Name of the page.</summary>
    public const string Name = "README.txt";

    private const int Width = 110;

    /// <summary>Its text.</summary>
    /// <param name="complaintKinds">Every complaint kind that the program knows for this shop.</param>
    /// <param name="components">Every component of the tables.</param>
    public static string Text(IReadOnlyList<string> complaintKinds, IReadOnlyList<string> components)
    {
        var text = new StringBuilder()
            .AppendLine("These lists ask about what the load could not decide by itself. Type your answer in the column 'answer',")
            .AppendLine("save the list as CSV under the same name next to shop.json (or in a folder 'review' there), and load")
            .AppendLine("again. You can leave rows open. Type 'ignore' for a row that needs no answer. Rows you have answered stay")
            .AppendLine("at the top of the next list. If an answer could not be used, a note says why.")
            .AppendLine();
        foreach (ReviewList list in ReviewList.All)
        {
            text.Append("  ").Append(list.File.PadRight(26)).Append("answer: ").AppendLine(list.Answers);
        }

        text.AppendLine().AppendLine("'counted_as' says what a row counts as until you answer. A component or a complaint kind of your own keeps its")
            .AppendLine("name until you merge it with another. A known component on a type of appliance that usually has none counts")
            .AppendLine("separately under both names: 'refrigerator_motor' is what you call a motor on refrigerators. Leave it, or name")
            .AppendLine("the component it is.")
            .AppendLine().AppendLine("Complaint kinds:");
        Wrap(text, complaintKinds);
        text.AppendLine().AppendLine("Components:");
        Wrap(text, components);
        text.AppendLine().AppendLine("Outcomes:");
        Wrap(text, Analysis.Vocabulary.Outcome.All.Where(o => o != Analysis.Vocabulary.Outcome.Unknown));
        return text.AppendLine().Append("  ").Append(ReviewNames.DataFaults.PadRight(26))
            .AppendLine("nothing to answer: contradictions in the data, with the row behind each").ToString();
    }

    private static void Wrap(StringBuilder text, IEnumerable<string> names)
    {
        int used = 0;
        foreach (string name in names.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))
        {
            if (used + name.Length > Width)
            {
                text.AppendLine();
                used = 0;
            }

            text.Append("  ").Append(name);
            used += name.Length + 2;
        }

        text.AppendLine();
    }
}
