using PartsSignal.SampleShop.Chance;
using PartsSignal.SampleShop.Simulation;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Scoring;

/// <summary>Counts, while the shop is made, whether its world is neither too easy nor too wild. Memory does not grow with the jobs.</summary>
internal sealed class CheckFigures
{
    private readonly Dictionary<string, int> _byFamily = Catalog.World.Families.ToDictionary(f => f.Code, _ => 0);
    private readonly Tally _all = new();
    private readonly Tally _noFill = new();
    private int _jobs;
    private int _withoutPart;
    private int _severalParts;
    private int _callbacks;
    private int _open;
    private int _repaired;
    private int _repairedFirst;
    private int _fitted;
    private int _fittedFirst;

    public void Add(Job job, Odds odds)
    {
        _jobs++;
        string truth = job.Unit.Family.Causes[job.TrueCause].Cause.Component;
        _byFamily[job.Unit.Family.Code]++;
        _callbacks += job.IsCallback ? 1 : 0;
        _withoutPart += truth == Cause.NoPart ? 1 : 0;
        _all.Add(job.Note.ComplaintKind, truth, odds);
        if (job.Note.ComplaintKind == "no_fill")
        {
            _noFill.Add("no_fill", truth, odds);
        }

        if (job.ClosedDay > ShopCalendar.AsOf)
        {
            _open++;
            return;
        }

        if (job.State is JobState.FixedWithPart or JobState.FixedWithoutPart or JobState.NoFaultFound)
        {
            _repaired++;
            _repairedFirst += job.Visits == 1 ? 1 : 0;
        }

        if (job.State == JobState.FixedWithPart)
        {
            _fitted++;
            _fittedFirst += job.Visits == 1 ? 1 : 0;
            _severalParts += job.Parts.Select(p => p.Part).Distinct().Count() > 1 ? 1 : 0;
        }
    }

    /// <summary>The figures; shares from 0 to 1, losses in nats per job.</summary>
    public WorldFigures Result() => new()
    {
        Jobs = _jobs,
        NoFillJobs = _noFill.Count,
        NoFillTop1 = _noFill.Top1,
        NoFillTop3 = _noFill.Top3,
        NoFillLossBest = _noFill.Loss,
        NoFillLossComplaintOnly = _noFill.SharesLoss(),
        LossBest = _all.Loss,
        LossBestExpected = _all.Expected,
        LossComplaintOnly = _all.SharesLoss(),
        Top1 = _all.Top1,
        Top3 = _all.Top3,
        FamiliesUnder100Jobs = _byFamily.Values.Count(n => n < 100) / (double)_byFamily.Count,
        TwoOrMoreParts = _severalParts / (double)Math.Max(1, _jobs),
        NoPartNeeded = _withoutPart / (double)Math.Max(1, _jobs),
        FirstVisitFitted = _fittedFirst / (double)Math.Max(1, _fitted),
        FirstVisitRepaired = _repairedFirst / (double)Math.Max(1, _repaired),
        Callbacks = _callbacks / (double)Math.Max(1, _jobs),
        OpenAtTheEnd = _open,
    };

    private sealed class Tally
    {
        private readonly Dictionary<(string Kind, string Component), int> _counts = [];
        private double _loss;
        private double _expected;
        private int _first;
        private int _within3;

        public int Count { get; private set; }

        public double Loss => _loss / Math.Max(1, Count);

        /// <summary>The loss the odds expect of themselves; close to the real one when they are right.</summary>
        public double Expected => _expected / Math.Max(1, Count);

        public double Top1 => _first / (double)Math.Max(1, Count);

        public double Top3 => _within3 / (double)Math.Max(1, Count);

        public void Add(string kind, string truth, Odds odds)
        {
            Count++;
            _counts[(kind, truth)] = _counts.GetValueOrDefault((kind, truth)) + 1;
            _loss -= ExactMath.Log(Math.Max(1e-6, odds.Of(truth)));
            foreach ((_, double chance) in odds.Shares)
            {
                _expected -= chance > 0 ? chance * ExactMath.Log(chance) : 0;
            }

            int rank = odds.RankOf(truth);
            _first += rank == 1 ? 1 : 0;
            _within3 += rank <= 3 ? 1 : 0;
        }

        public double SharesLoss()
        {
            double loss = 0;
            foreach (IGrouping<string, KeyValuePair<(string Kind, string Component), int>> kind in _counts
                .OrderBy(c => c.Key.Kind, StringComparer.Ordinal).ThenBy(c => c.Key.Component, StringComparer.Ordinal)
                .GroupBy(c => c.Key.Kind))
            {
                double total = kind.Sum(c => c.Value);
                foreach ((_, int count) in kind)
                {
                    loss -= count * ExactMath.Log(count / total);
                }
            }

            return loss / Math.Max(1, Count);
        }
    }
}
