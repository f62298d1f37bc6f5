using System.Globalization;
using System.Text.Json;
using PartsSignal.SampleShop.Simulation;
using PartsSignal.SampleShop.World;
using PartsSignal.SampleShop.Writing;

namespace PartsSignal.SampleShop.Scoring;

/// <summary>Writes what really happened beside the shop's files: for tests and the sample run's own check, never for the program's answers.</summary>
internal sealed class TruthFiles : IShopLog, IDisposable
{
    private static readonly JsonSerializerOptions Style = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
    };

    private readonly string _folder;
    private readonly PackedFile _jobs;
    private readonly DelimitedFile _planted;
    private readonly CheckFigures _figures = new();

    public TruthFiles(string folder)
    {
        Directory.CreateDirectory(folder);
        _folder = folder;
        _jobs = new PackedFile(Path.Combine(folder, "jobs.csv.gz"));
        _jobs.Row(
            "job_id", "complaint_kind", "true_cause", "true_component", "recorded_component", "diagnosis_right",
            "callback", "family", "built_on", "installed_on", "odds", "recorded_odds");
        _planted = new DelimitedFile(folder, "planted.csv", ',', DelimitedFile.Utf8);
        _planted.Row("job_id", "text");
    }

    public void Opened(Job job)
    {
    }

    public void DayDone(int day)
    {
    }

    public void Ordered(OrderLine line)
    {
    }

    public void Closing(Area area)
    {
    }

    public void Final(Job job)
    {
        (Odds truth, Odds recorded) = BestOdds.For(job);
        _figures.Add(job, truth);
        FamilyCause cause = job.Unit.Family.Causes[job.TrueCause];
        bool seen = job.VisitDay <= ShopCalendar.AsOf;
        _jobs.Row(
            job.Id,
            job.Note.ComplaintKind,
            cause.Cause.Name,
            cause.Cause.Component,
            Recorded(job),
            !seen ? "" : job.DiagnosisRight ? "1" : "0",
            job.IsCallback ? "1" : "0",
            job.Unit.Family.Code,
            JobRow.DayText(job.Unit.BuiltDay, "yyyy-MM-dd"),
            JobRow.DayText(job.Unit.InstalledDay, "yyyy-MM-dd"),
            Text(truth),
            Text(recorded));
        if (job.Note.Planted.Length > 0)
        {
            _planted.Row(job.Id, job.Note.Planted);
        }
    }

    /// <summary>Writes the tables that do not come from single jobs.</summary>
    public WorldFigures WriteTables()
    {
        WorldFigures figures = _figures.Result();
        File.WriteAllText(Path.Combine(_folder, "world.json"), JsonSerializer.Serialize(Rounded(figures), Style) + "\n");
        LivesFile.Write(_folder);
        InjectedFile.Write(_folder);
        return figures;
    }

    public void Dispose()
    {
        _jobs.Dispose();
        _planted.Dispose();
    }

    // empty: the log does not say (open, declined, given up)
    private static string Recorded(Job job) => job.StateOn(ShopCalendar.AsOf) switch
    {
        JobState.FixedWithPart => job.Parts[0].Part.Component,
        JobState.FixedWithoutPart or JobState.NoFaultFound => Cause.NoPart,
        _ => "",
    };

    private static string Text(Odds odds) => string.Join(';', odds.Shares.Where(s => s.Chance >= 0.000005).Select(s =>
        string.Create(CultureInfo.InvariantCulture, $"{s.Component}:{s.Chance:0.#####}")));

    private static SortedDictionary<string, double> Rounded(WorldFigures figures)
    {
        var all = new SortedDictionary<string, double>(StringComparer.Ordinal);
        foreach (System.Reflection.PropertyInfo figure in typeof(WorldFigures).GetProperties())
        {
            if (figure.PropertyType == typeof(double) || figure.PropertyType == typeof(int))
            {
                double value = Convert.ToDouble(figure.GetValue(figures), CultureInfo.InvariantCulture);
                all[JsonNamingPolicy.CamelCase.ConvertName(figure.Name)] = Math.Round(value, 6);
            }
        }

        return all;
    }
}
