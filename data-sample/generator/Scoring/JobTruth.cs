using System.Globalization;
using System.IO.Compression;

namespace PartsSignal.SampleShop.Scoring;

/// <summary>What really happened on one job of a fictional shop, a row of <c>truth/jobs.csv.gz</c>.</summary>
/// <param name="JobId">The job.</param>
/// <param name="TrueNeed">What was really at fault, or null if not recorded.</param>
/// <param name="Odds">Best possible odds of the true need.</param>
/// <param name="RecordedOdds">Best possible odds of the need that gets written down, wrong diagnoses included.</param>
internal sealed record JobTruth(string JobId, string? TrueNeed, IReadOnlyDictionary<string, double> Odds, IReadOnlyDictionary<string, double> RecordedOdds)
{
    /// <summary>Reads the truth of some jobs.</summary>
    /// <param name="path">Path of <c>jobs.csv.gz</c>.</param>
    /// <param name="jobs">The jobs wanted.</param>
    /// <exception cref="InvalidDataException">The file has another layout.</exception>
    public static IReadOnlyDictionary<string, JobTruth> Read(string path, IReadOnlySet<string> jobs)
    {
        using var text = new StreamReader(new GZipStream(File.OpenRead(path), CompressionMode.Decompress));
        string[] head = (text.ReadLine() ?? "").Split(',');
        int job = Column("job_id"), need = Column("true_component"), odds = Column("odds"), recorded = Column("recorded_odds");
        var truths = new Dictionary<string, JobTruth>(StringComparer.Ordinal);
        while (text.ReadLine() is { } line)
        {
            string[] cells = line.Split(',');
            if (cells.Length != head.Length)
            {
                throw new InvalidDataException($"{path}: a row has {cells.Length} cells where the header has {head.Length}.");
            }

            if (jobs.Contains(cells[job]))
            {
                truths[cells[job]] = new JobTruth(cells[job], cells[need].Length == 0 ? null : cells[need], Parse(cells[odds]), Parse(cells[recorded]));
            }
        }

        return truths;

        int Column(string name) => Array.IndexOf(head, name) is >= 0 and var place ? place : throw new InvalidDataException($"{path} has no column {name}.");
    }

    /// <summary>Reads odds written as <c>need:probability;need:probability</c>.</summary>
    /// <exception cref="InvalidDataException">A part is not written that way.</exception>
    public static IReadOnlyDictionary<string, double> Parse(string text) =>
        text.Split(';', StringSplitOptions.RemoveEmptyEntries).Select(p => p.Split(':')).ToDictionary(
            p => p[0],
            p => p.Length == 2 && double.TryParse(p[1], NumberStyles.Float, CultureInfo.InvariantCulture, out double odds)
                ? odds
                : throw new InvalidDataException($"'{text}' does not list odds as need:probability."),
            StringComparer.Ordinal);
}
