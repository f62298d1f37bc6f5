using System.Text;

namespace PartsSignal.Pipeline.Review;

/// <summary>The page next to the review lists: how to answer them.</summary>
internal static class ReviewReadme
{
    /// <summary>Name of the page.</summary>
    public const string Name = "README.txt";

    /// <summary>Its text.</summary>
    public static string Text()
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

        return text.AppendLine().Append("  ").Append(ReviewNames.DataFaults.PadRight(26))
            .AppendLine("nothing to answer: contradictions in the data, with the row behind each").ToString();
    }
}
