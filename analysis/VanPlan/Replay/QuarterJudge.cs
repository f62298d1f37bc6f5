using System.Globalization;
using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.VanPlan.Replay;

/// <summary>Replays one van's quarter for any load.</summary>
internal sealed class QuarterJudge
{
    private readonly TestQuarter _test;
    private readonly string _van;
    private readonly FirstComeReplay _replay;
    private readonly int[] _mostOut;

    public QuarterJudge(TestQuarter test, VanPlanOptions options, string van)
    {
        (_test, _van) = (test, van);
        RestockRule restock = test.Restock(options);
        _replay = new FirstComeReplay(test.Stream, restock, ConsumeRule.TakeWhatIsThere);
        _mostOut = new int[test.Parts.Count];
        foreach (PartNeed level in RequiredLevels.From(test.Stream, restock).SelectMany(j => j.Levels))
        {
            _mostOut[level.Part] = Math.Max(_mostOut[level.Part], level.Quantity);
        }
    }

    /// <summary>Replays a load.</summary>
    public ReplayRow Row(ReplayPolicy policy, int[] load)
    {
        int finished = (int)_replay.Run(load);
        (int, int, int)[] Weeks(int leastParts)
        {
            var weeks = new SortedDictionary<int, (int Jobs, int Finished)>();
            for (int j = 0; j < _test.Stream.Count; j++)
            {
                int counts = _test.Stream.End(j) - _test.Stream.First(j) >= leastParts ? 1 : 0, week = _test.Stream.Day[j] / 7;
                (int jobs, int done) = weeks.GetValueOrDefault(week);
                weeks[week] = (jobs + counts, done + (_replay.Done[j] ? counts : 0));
            }

            return [.. weeks.Select(w => (w.Key, w.Value.Jobs, w.Value.Finished))];
        }

        long money = 0;
        long idle = 0;
        for (int p = 0; p < load.Length; p++)
        {
            money += load[p] * _test.Parts[p].PriceCents;
            idle += Math.Max(0, load[p] - _mostOut[p]) * _test.Parts[p].PriceCents;
        }

        return new ReplayRow(
            QuarterName(_test.FirstDay), _van, policy, _test.Stream.Count, finished, money / 100m, idle / 100m,
            Weeks(0))
        {
            PartSets = Weeks(2),
        };
    }

    internal static string QuarterName(DateOnly day) =>
        string.Create(CultureInfo.InvariantCulture, $"{day.Year}Q{((day.Month - 1) / 3) + 1}");
}
