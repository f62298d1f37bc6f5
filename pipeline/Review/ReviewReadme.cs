using System.Text;

namespace PartsSignal.Pipeline.Review;

/// <summary>The page that lies beside the review lists: how to answer them.</summary>
internal static class ReviewReadme
{
    /// <summary>Name of the page.</summary>
    public const string Name = "README.txt";

    /// <summary>Its text.</summary>
    public static string Text()
    {
        var text = new StringBuilder()
            .AppendLine("What the load could not decide by itself. Fill in the column 'answer', save the list as CSV under its")
            .AppendLine("own name beside shop.json (or in a folder 'review' there), and load again. Rows may stay open; 'ignore'")
            .AppendLine("says that a row needs no answer. Answered rows stay on top of the next list. An answer that could not be")
            .AppendLine("followed comes back with a note that says why.")
            .AppendLine();
        foreach (ReviewList list in ReviewList.All)
        {
            text.Append("  ").Append(list.File.PadRight(26)).Append("answer: ").AppendLine(list.Answers);
        }

        return text.AppendLine().Append("  ").Append(ReviewNames.DataFaults.PadRight(26))
            .AppendLine("for reading: contradictions in the data, with the row that made each").ToString();
    }
}
