using System.Globalization;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.FullRun;

/// <summary>Why a run has no rates to give.</summary>
/// <param name="Said">What is missing.</param>
/// <param name="OnCommandLine">What to do on the command line.</param>
/// <param name="OnPages">What to do on the bench.</param>
internal sealed record RunLack(string Said, string OnCommandLine, string OnPages);

/// <summary>Tells when a run had nothing to work on: its pages are there, and say nothing.</summary>
internal static class RunOutcome
{
    /// <summary>What is missing, or null if nothing is.</summary>
    /// <param name="results">Folder of the results.</param>
    public static RunLack? Lacks(string results)
    {
        string path = Path.Combine(results, "month_figures.csv");
        if (!File.Exists(path))
        {
            return null;
        }

        IReadOnlyList<(long Calls, long Open, long Known)> months = ResultCsv.Read(path, csv => (Whole(csv.GetString("calls")), Whole(csv.GetString("still_open")), Whole(csv.GetString("cause_known"))));
        (long calls, long open, long known) = (months.Sum(m => m.Calls), months.Sum(m => m.Open), months.Sum(m => m.Known));
        string all = calls.ToString("N0", CultureInfo.InvariantCulture);
        return calls == 0 ? new RunLack("No call was read, so the report is empty.", "Run inspect to see which file is the job log.", "Under Files, say which file is the job log.")
            : open == calls ? new RunLack($"Of {all} calls none counts as finished, so no rate can be given.", "Run inspect and say which column holds the closing day or the outcome.", "Under Files, open the job log and say which column holds the closing day or the outcome.")
            : known == 0 ? new RunLack($"Of {all} calls none says what failed, so no rate can be given.", "Run inspect and say where parts, outcomes or diagnoses stand.", "Under Files, open the job log and say which columns hold parts, outcomes or diagnoses.")
            : null;
    }

    private static long Whole(string text) => long.TryParse(text, NumberStyles.Integer, CultureInfo.InvariantCulture, out long value) ? value : 0;
}
