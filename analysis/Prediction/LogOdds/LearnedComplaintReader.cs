using PartsSignal.Analysis.Vocabulary;

namespace PartsSignal.Analysis.Prediction.LogOdds;

/// <summary>
/// Second reading of a complaint whose kind the word table could not tell: how the shop's own earlier complaints of
/// each kind were worded (naive Bayes over stems, after Maron 1961). Slips of the pen are its main catch.
/// </summary>
public sealed class LearnedComplaintReader
{
    private const double Smoothing = 0.05;
    private const double LeastSure = 0.8;
    private readonly Dictionary<string, double[]> _logs = new(StringComparer.Ordinal);
    private readonly double[] _prior;

    /// <summary>Puts a reader together.</summary>
    /// <param name="words">Words it knows.</param>
    /// <param name="kinds">Kinds, in ordinal order.</param>
    /// <param name="jobs">Jobs of each kind.</param>
    /// <param name="counts">Per stem, jobs of each kind whose complaint holds it.</param>
    public LearnedComplaintReader(WordList words, IReadOnlyList<string> kinds, IReadOnlyList<int> jobs, IReadOnlyDictionary<string, int[]> counts)
    {
        (Words, Kinds, Jobs, Counts) = (words, kinds, jobs, counts);
        double all = jobs.Sum() + 1.0;
        _prior = [.. jobs.Select(n => Math.Log((n + Smoothing) / all))];
        foreach ((string stem, int[] count) in counts)
        {
            _logs[stem] = [.. count.Select((c, k) => Math.Log((c + Smoothing) / (jobs[k] + 2 * Smoothing)))];
        }
    }

    /// <summary>Words it knows.</summary>
    public WordList Words { get; }

    /// <summary>Kinds it tells apart.</summary>
    public IReadOnlyList<string> Kinds { get; }

    /// <summary>Jobs of each kind it learned from.</summary>
    public IReadOnlyList<int> Jobs { get; }

    /// <summary>Per stem, jobs of each kind.</summary>
    public IReadOnlyDictionary<string, int[]> Counts { get; }

    /// <summary>Log of each kind's share of the jobs.</summary>
    internal IReadOnlyList<double> Prior => _prior;

    /// <summary>Per stem, log of the share of each kind's complaints that hold it.</summary>
    internal IReadOnlyDictionary<string, double[]> Logs => _logs;

    /// <summary>Learns from how complaints of each kind were worded.</summary>
    public static LearnedComplaintReader Learn(IReadOnlyList<ClosedCall> calls, WordList words)
    {
        string[] kinds = [.. calls.Select(c => c.Call.ComplaintKind).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        Dictionary<string, int> places = NeedList.Places(kinds);
        var jobs = new int[kinds.Length];
        var counts = new SortedDictionary<string, int[]>(StringComparer.Ordinal);
        foreach (Call call in calls.Select(c => c.Call))
        {
            int kind = places[call.ComplaintKind];
            jobs[kind]++;
            foreach (string stem in words.Meant(call.ComplaintText))
            {
                if (!counts.TryGetValue(stem, out int[]? count))
                {
                    counts[stem] = count = new int[kinds.Length];
                }

                count[kind]++;
            }
        }

        return new LearnedComplaintReader(words, kinds, jobs, counts);
    }

    /// <summary>The call's kind; for one the table could not tell, the kind its words point to when they do so clearly.</summary>
    public string KindOf(Call call)
    {
        if (call.ComplaintKind != Need.OtherComplaint || Kinds.Count == 0)
        {
            return call.ComplaintKind;
        }

        double[] scores = [.. _prior];
        foreach (string stem in Words.Meant(call.ComplaintText))
        {
            if (_logs.TryGetValue(stem, out double[]? logs))
            {
                for (int k = 0; k < scores.Length; k++)
                {
                    scores[k] += logs[k];
                }
            }
        }

        return Clearest(Kinds, scores) ?? call.ComplaintKind;
    }

    /// <summary>The kind with the highest score, or null if its odds are below 0.8.</summary>
    /// <param name="kinds">The kinds, at least one.</param>
    /// <param name="scores">Log odds of each, up to a constant.</param>
    internal static string? Clearest(IReadOnlyList<string> kinds, double[] scores)
    {
        int best = Array.IndexOf(scores, scores.Max());
        double sure = 1 / scores.Sum(s => Math.Exp(s - scores[best]));
        return sure >= LeastSure ? kinds[best] : null;
    }
}
