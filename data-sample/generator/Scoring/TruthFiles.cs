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

/// <summary>What was put into the world on purpose, with its dates.</summary>
internal static class InjectedFile
{
    public static void Write(string folder)
    {
        using var file = new DelimitedFile(folder, "injected.csv", ',', DelimitedFile.Utf8);
        file.Row("what", "subject", "component", "from", "to", "detail");
        file.Row(
            "bad batch", Faults.BatchFamily, Faults.BatchComponent, Month(Faults.BatchFirst), Month(Faults.BatchLast),
            string.Create(CultureInfo.InvariantCulture,
                $"build months; {Faults.BatchShare:0.00} of the valves live Weibull({Faults.BatchShape:0.0}, {Faults.BatchScaleYears:0.00} years); the rise begins about {Month(Faults.BatchFirst + 11)}"));
        file.Row(
            "supplier fault", Supplier.Second, Faults.PumpComponent, "", "",
            string.Create(CultureInfo.InvariantCulture,
                $"{Faults.PumpEarlyShare:0.00} of the pumps live Weibull({Faults.PumpEarlyShape:0.0}, {Faults.PumpEarlyScaleYears:0.00} years)"));
        file.Row("software change", "job log", "", JobRow.DayText(ShopCalendar.SoftwareChange, "yyyy-MM-dd"), "", "headers, date order, separator, encoding and words change");
        file.Row("double export", LogLayouts.FirstExport.File, "", "2024-03-01", "2024-04-03", "exported 2024-04-06 and again within the year's file");
        file.Row("damaged file", OrderFiles.FirstDamaged, "", "2024-04-01", "2024-06-30", "part numbers changed by a spreadsheet");
        file.Row("mains works", "clogged_screen", "", "2023-04-10", "2023-06-23", "screens clog about three times as often");
        file.Row("mains works", "clogged_screen", "", "2025-09-01", "2025-11-29", "screens clog about three times as often");
    }

    private static string Month(int index) => ShopCalendar.Date(ShopCalendar.MonthStart(index)).ToString("yyyy-MM", CultureInfo.InvariantCulture);
}

/// <summary>The true lives: one row per family and cause.</summary>
internal static class LivesFile
{
    public static void Write(string folder)
    {
        using var file = new DelimitedFile(folder, "lives.csv", ',', DelimitedFile.Utf8);
        file.Row("family", "appliance_type", "cause", "component", "shape", "scale_years", "part_number", "rate_at_1", "rate_at_5", "rate_at_10");
        foreach (ModelFamily family in Catalog.World.Families)
        {
            for (int k = 0; k < family.Causes.Count; k++)
            {
                FamilyCause cause = family.Causes[k];
                file.Row(
                    family.Code,
                    family.Type,
                    cause.Cause.Name,
                    cause.Cause.Component,
                    Number(cause.Cause.Shape),
                    Number(cause.ScaleYears),
                    cause.Part?.Current.Number ?? "",
                    Number(LifeTables.Rate(family, k, family.LaunchMonth, 1)),
                    Number(LifeTables.Rate(family, k, family.LaunchMonth, 5)),
                    Number(LifeTables.Rate(family, k, family.LaunchMonth, 10)));
            }
        }
    }

    private static string Number(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);
}
