using System.Globalization;
using PartsSignal.Analysis.Sql;

namespace PartsSignal.Pipeline.Transform;

/// <summary>Jobs that count as finished, or as neither finished nor open, without a closing day that says so.</summary>
/// <param name="ByStatus">Finished by their status.</param>
/// <param name="ByOutcome">Finished by their outcome.</param>
/// <param name="ByRow">Finished because the row names a part or what was at fault, in a log that does not tell the end.</param>
/// <param name="NotTold">Neither finished nor open: nothing says.</param>
internal sealed record AssumedClosing(long ByStatus, long ByOutcome, long ByRow, long NotTold)
{
    /// <summary>The counts of a load.</summary>
    public static AssumedClosing Read(Database database) => database.Read<AssumedClosing>("queries/session/assumed_closing.sql")[0];

    /// <summary>What was assumed, or null if every job has a closing day or is open.</summary>
    public string? Sentence
    {
        get
        {
            string[] ways = [.. new[] { (ByStatus, "the status says so"), (ByOutcome, "the outcome says so"), (ByRow, "the row names a part and the log does not say which jobs are finished") }
                .Where(w => w.Item1 > 0).Select(w => $"{Jobs(w.Item1)} because {w.Item2}")];
            string finished = ways.Length == 0 ? "" : $"These have no closing day and are counted as finished on the day of the call: {string.Join(", ", ways)}.";
            string open = NotTold == 0 ? "" : $"For {Jobs(NotTold)}, the log does not say whether {(NotTold == 1 ? "it is" : "they are")} finished.";
            return finished.Length + open.Length == 0 ? null : string.Join(' ', new[] { finished, open }.Where(s => s.Length > 0));
        }
    }

    private static string Jobs(long count) => string.Create(CultureInfo.InvariantCulture, $"{count:N0} {(count == 1 ? "job" : "jobs")}");
}
