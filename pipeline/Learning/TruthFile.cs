using System.IO.Compression;
using PartsSignal.Analysis.PartPrediction.Learning;

namespace PartsSignal.Pipeline.Learning;

/// <summary>
/// The truth a fictional shop comes with, <c>truth/jobs.csv.gz</c> beside its files. Only for the self-check of the
/// sample: nothing is learned from it. A real shop has none.
/// </summary>
public static class TruthFile
{
    /// <summary>What is known of each job; empty where there is no such file.</summary>
    /// <param name="input">Folder with the shop's files.</param>
    /// <param name="jobs">Jobs to read; null: all.</param>
    /// <exception cref="InvalidDataException">The file is there but is not written as expected.</exception>
    public static IReadOnlyDictionary<string, JobTruth> Read(string input, IReadOnlySet<string>? jobs = null)
    {
        string path = Path.Combine(input, "truth", "jobs.csv.gz");
        var truths = new Dictionary<string, JobTruth>(StringComparer.Ordinal);
        if (!File.Exists(path))
        {
            return truths;
        }

        using var text = new StreamReader(new GZipStream(File.OpenRead(path), CompressionMode.Decompress));
        string[] head = (text.ReadLine() ?? "").Split(',');
        int job = Column(head, "job_id"), need = Column(head, "true_component"), odds = Column(head, "odds"), recorded = Column(head, "recorded_odds");
        while (text.ReadLine() is { } line)
        {
            string[] cells = line.Split(',');
            if (cells.Length != head.Length)
            {
                throw new InvalidDataException($"{path}: a row has {cells.Length} cells where the header has {head.Length}.");
            }

            if (jobs?.Contains(cells[job]) == false)
            {
                continue;
            }

            truths[cells[job]] = new JobTruth(
                cells[job], cells[need].Length == 0 ? null : cells[need], JobTruth.Parse(cells[odds]), JobTruth.Parse(cells[recorded]));
        }

        return truths;
    }

    private static int Column(string[] head, string name) =>
        Array.IndexOf(head, name) is >= 0 and var place ? place : throw new InvalidDataException($"truth/jobs.csv.gz has no column {name}.");
}
