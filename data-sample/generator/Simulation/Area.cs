using PartsSignal.SampleShop.Chance;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Simulation;

/// <summary>
/// One area with its three vans, forward in time from the first appliance sold to the last day of the log. A larger
/// shop has more areas, simulated one after another, so that memory holds one area whatever the number of jobs.
/// </summary>
internal sealed class Area
{
    public const int Vans = 3;
    private const double CallsAgain = 0.85;

    private readonly Catalog _world = Catalog.World;
    private readonly Fleet _fleet;
    private readonly Dice _dice;
    private readonly IShopLog _log;
    private readonly Numbering _numbers;
    private readonly CallTaker _calls;
    private readonly OrderDesk _orders;
    private readonly Workshop _workshop;
    private readonly VanStock[] _vans = [new(), new(), new()];
    private readonly List<Job>?[] _visits = new List<Job>?[ShopCalendar.AsOf + 1];
    private readonly List<Job>?[] _closings = new List<Job>?[ShopCalendar.AsOf + 1];
    private readonly List<(Unit Unit, int Cause, CallNote Note)>?[] _callbacks = new List<(Unit, int, CallNote)>?[ShopCalendar.AsOf + 1];
    private readonly Dictionary<int, int>[] _neededBefore = [[], [], []];
    private readonly SortedDictionary<int, Job> _open = [];

    /// <param name="seed">Seed of the people and machines.</param>
    /// <param name="eventSeed">Seed of what happens to them.</param>
    /// <param name="number">Number of the area, from 0.</param>
    /// <param name="size">1: about 20,000 jobs.</param>
    /// <param name="numbers">Job and order numbers.</param>
    /// <param name="log">Hears of everything.</param>
    public Area(long seed, long eventSeed, int number, double size, Numbering numbers, IShopLog log)
    {
        Number = number;
        _log = log;
        _numbers = numbers;
        var population = new Population(seed, number, size);
        _dice = Dice.For(eventSeed, "events", number);
        _fleet = new Fleet(population, _dice);
        _calls = new CallTaker(new ComplaintWriter(population.Maker.Streets), Dice.For(eventSeed, "calls", number));
        _orders = new OrderDesk(numbers, _vans, log, _dice);
        _workshop = new Workshop(_vans, _orders, Technician.ForArea(number), _dice);
    }

    public int Number { get; }

    public IReadOnlyList<VanStock> Stock => _vans;

    /// <summary>Every unit the register lists, gone or not.</summary>
    public IReadOnlyList<Unit> Register => _fleet.Register;

    /// <summary>Name of a van in the log.</summary>
    public string VanName(int van) => ((Number * Vans) + van + 1).ToString(System.Globalization.CultureInfo.InvariantCulture);

    public void Run()
    {
        _fleet.Settle();
        for (int day = 0; day <= ShopCalendar.AsOf; day++)
        {
            if (day == ShopCalendar.LogStart)
            {
                for (int van = 0; van < Vans; van++)
                {
                    _vans[van].FillFromMemory(_neededBefore[van], _world.Parts, _dice);
                }
            }

            _fleet.LiveThrough(day, Fail);
            if (day >= ShopCalendar.LogStart)
            {
                Work(day);
                _log.DayDone(day);
            }
        }

        foreach (Job job in _open.Values)
        {
            _log.Final(job);
        }

        _log.Closing(this);
    }

    private void Fail(Unit unit, int cause, int day)
    {
        unit.FailsOn[cause] = int.MaxValue;
        if (!unit.Owner.IsContract && _dice.Chance(Wear.ScrapsAtOnce(unit.AgeOn(day))))
        {
            unit.EndDay = day;
            return;
        }

        FamilyCause failed = unit.Family.Causes[cause];
        bool ours = _dice.Chance(unit.Owner.Loyalty);
        if (ours && day >= ShopCalendar.LogStart)
        {
            Open(unit, cause, _calls.Take(unit, failed, day), false, day);
            return;
        }

        if (ours && day >= ShopCalendar.LogStart - 365 && failed.Part is not null)
        {
            Dictionary<int, int> needed = _neededBefore[unit.Owner.Van];
            needed[failed.Part.Index] = needed.GetValueOrDefault(failed.Part.Index) + 1;
        }

        bool second = failed.Part is not null && _dice.Chance(failed.Part.SecondSupplierShare);
        _fleet.Renew(unit, cause, day + 3, second);
    }

    private void Open(Unit unit, int cause, CallNote note, bool callback, int day)
    {
        (string id, int number) = _numbers.NextJob(day);
        var job = new Job
        {
            Id = id,
            Number = number,
            OpenedDay = day,
            Unit = unit,
            TrueCause = cause,
            IsCallback = callback,
            Note = note,
            Van = _dice.Chance(0.1) ? _dice.Below(Vans) : unit.Owner.Van,
            VisitDay = ShopCalendar.NextWorkday(day + _dice.Weighted([0.15, 0.35, 0.25, 0.15, 0.10])),
        };
        _open[number] = job;
        _log.Opened(job);
        Plan(_visits, job.VisitDay, job);
    }

    private void Work(int day)
    {
        _orders.ReceiveUpTo(day);
        foreach ((Unit unit, int cause, CallNote note) in _callbacks[day] ?? [])
        {
            if (!unit.IsGone(day))
            {
                Open(unit, cause, _calls.TakeAgain(unit, note, day), true, day);
            }
        }

        foreach (Job job in _visits[day] ?? [])
        {
            _workshop.Visit(job, day);
            Plan(_closings, job.ClosedDay, job);
        }

        foreach (Job job in _closings[day] ?? [])
        {
            Close(job, day);
        }

        if (ShopCalendar.Date(day).DayOfWeek == DayOfWeek.Friday)
        {
            for (int van = 0; van < Vans; van++)
            {
                _orders.Restock(van, day);
            }
        }

        if (ShopCalendar.Date(day) is { Day: 1, Month: 1 or 4 or 7 or 10 })
        {
            foreach (VanStock van in _vans)
            {
                van.Adapt(_world.Parts);
            }
        }

        _visits[day] = null;
        _closings[day] = null;
        _callbacks[day] = null;
    }

    private void Close(Job job, int day)
    {
        _open.Remove(job.Number);
        _log.Final(job);
        Unit unit = job.Unit;
        if (job.State is JobState.Declined or JobState.NotWorthRepairing)
        {
            if (_dice.Chance(job.State == JobState.Declined ? 0.45 : 0.9))
            {
                unit.EndDay = day;
                _fleet.Await(unit, day + 1);
            }
            else
            {
                _fleet.Renew(unit, job.TrueCause, day + 5, false);
                _fleet.Await(unit, day + 6);
            }

            return;
        }

        int diagnosis = job.Diagnosis!.Value;
        bool second = job.Parts.Count > 0 && job.Parts[0].SecondSupplier;
        _fleet.Renew(unit, diagnosis, day, second);
        if (!job.DiagnosisRight)
        {
            int back = day + 2 + _dice.Below(19);
            if (unit.Owner.IsContract || _dice.Chance(CallsAgain))
            {
                Plan(_callbacks, back, (unit, job.TrueCause, job.Note));
            }
            else
            {
                _fleet.Renew(unit, job.TrueCause, back, false);
            }
        }

        _fleet.Await(unit, day + 1);
    }

    private static void Plan<T>(List<T>?[] days, int day, T what)
    {
        if (day <= ShopCalendar.AsOf)
        {
            (days[day] ??= []).Add(what);
        }
    }
}
