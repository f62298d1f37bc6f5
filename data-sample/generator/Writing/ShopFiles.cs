using System.Text;
using PartsSignal.SampleShop.Simulation;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Writing;

/// <summary>
/// Writes the shop's files as things happen. A job's row waits for its turn by job number until nothing about it can
/// change; the wait is as long as the longest open job, whatever the size of the shop.
/// </summary>
internal sealed class ShopFiles : IShopLog, IDisposable
{
    public const string Register = "guest-house-register.csv";
    public const string VanCounts = "van-count-2026-10-30.csv";

    private static readonly int TwiceFrom = ShopCalendar.Day(2024, 3, 1);
    private static readonly int TwiceTo = ShopCalendar.Day(2024, 4, 4);
    private static readonly int FirstExportDay = ShopCalendar.Day(2024, 4, 6);

    private readonly string _folder;
    private readonly long _seed;
    private readonly Dictionary<int, JobLogFile> _logs;
    private readonly JobLogFile _firstExport;
    private readonly OrderFiles _orders;
    private readonly DelimitedFile _register;
    private readonly DelimitedFile _vanCounts;
    private readonly SortedDictionary<int, Job> _waiting = [];
    private readonly List<Job> _twice = [];
    private int _next;

    public ShopFiles(string folder, long seed)
    {
        _folder = folder;
        _seed = seed;
        _logs = LogLayouts.ByYear.ToDictionary(l => l.Key, l => new JobLogFile(folder, l.Value, seed));
        _firstExport = new JobLogFile(folder, LogLayouts.FirstExport, seed);
        _orders = new OrderFiles(folder);
        _register = new DelimitedFile(folder, Register, ';', DelimitedFile.Utf8WithMark);
        _register.Row("House", "Telephone", "Address", "Make", "Model", "Serial number", "Machine", "Built", "Installed", "Taken out");
        _vanCounts = new DelimitedFile(folder, VanCounts, ',', DelimitedFile.Utf8);
        _vanCounts.Row("Van", "Part number", "What", "Counted", "On");
    }

    public int Areas { get; private set; }

    public int Jobs => _next;

    public void Opened(Job job)
    {
        if (job.OpenedDay >= TwiceFrom && job.OpenedDay < TwiceTo)
        {
            _twice.Add(job);
        }
    }

    public void DayDone(int day)
    {
        if (day != FirstExportDay)
        {
            return;
        }

        foreach (Job job in _twice)
        {
            _firstExport.Write(JobRow.On(job, VanName(job), day, _seed));
        }

        _twice.Clear();
    }

    public void Final(Job job)
    {
        _waiting[job.Number] = job;
        while (_waiting.Count > 0 && _waiting.Keys.First() == _next)
        {
            Job next = _waiting[_next];
            _waiting.Remove(_next);
            _next++;
            _logs[ShopCalendar.Year(next.OpenedDay)].Write(JobRow.On(next, VanName(next), ShopCalendar.AsOf, _seed));
        }
    }

    public void Ordered(OrderLine line) => _orders.Write(line);

    public void Closing(Area area)
    {
        Areas++;
        foreach (Unit unit in area.Register)
        {
            _register.Row(
                unit.Owner.Name,
                unit.Owner.Phone,
                unit.Owner.Address,
                unit.Family.Brand.Name,
                unit.Model.Number,
                unit.Serial,
                unit.Family.Type,
                ShopCalendar.Date(unit.BuiltDay).ToString("yyyy-MM", System.Globalization.CultureInfo.InvariantCulture),
                JobRow.DayText(unit.InstalledDay, "yyyy-MM-dd"),
                unit.EndDay <= ShopCalendar.AsOf ? JobRow.DayText(unit.EndDay, "yyyy-MM-dd") : "");
        }

        for (int van = 0; van < Area.Vans; van++)
        {
            foreach ((PartLineage part, int version, int onHand) in area.Stock[van].OnHand)
            {
                _vanCounts.Row(area.VanName(van), part.Versions[version].Number, part.Description, JobRow.Text(onHand), "2026-10-30");
            }
        }
    }

    public void Dispose()
    {
        foreach (JobLogFile log in _logs.Values)
        {
            log.Dispose();
        }

        _firstExport.Dispose();
        _orders.Dispose();
        _register.Dispose();
        _vanCounts.Dispose();
    }

    /// <summary>Writes what does not depend on events: the lists, and shop.json.</summary>
    public void WriteLists()
    {
        ReferenceFiles.Write(_folder);
        File.WriteAllText(Path.Combine(_folder, "shop.json"), ShopJson.Write(Areas), new UTF8Encoding(false));
    }

    private string VanName(Job job) => JobRow.Text((Areas * Area.Vans) + job.Van + 1);
}
