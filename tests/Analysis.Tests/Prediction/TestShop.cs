using PartsSignal.Analysis.Prediction;

namespace PartsSignal.Analysis.Tests.Prediction;

/// <summary>
/// A small world with known odds: Weibull lives per family and component, odds of how each fault shows, a season, and an
/// office that types the complaint with slips. The best possible odds follow by Bayes' rule.
/// </summary>
internal sealed class TestShop
{
    private static readonly string[] Types = ["dryer", "washer"];
    private static readonly string[] Kinds = ["error_code", "leak", "no_fill", "no_heat", "no_start", "noise"];
    private readonly Random _random;
    private readonly string[] _needs = [.. Enumerable.Range(0, 8).Select(i => $"part_{i}"), "none"];
    private readonly double[] _shape;
    private readonly double[][] _shows;
    private readonly double[,] _rate;
    private readonly double[] _summer;

    public TestShop(int seed, int families = 24)
    {
        _random = new Random(seed);
        _shape = [.. _needs.Select(_ => 0.7 + 2.5 * _random.NextDouble())];
        _summer = [.. _needs.Select(_ => 0.5 * Normal())];
        _shows = [.. Enumerable.Range(0, _needs.Length * 2).Select(_ => Shares(Kinds.Length, 1.5))];
        _rate = new double[families, _needs.Length];
        double[] own = [.. _needs.Select(_ => 0.5 * Normal())];
        for (int f = 0; f < families; f++)
        {
            for (int k = 0; k < _needs.Length; k++)
            {
                _rate[f, k] = own[k] + 0.8 * Normal();
            }
        }
    }

    /// <summary>Jobs of some months, three a day or so, with the best possible odds of each.</summary>
    public IReadOnlyList<(ClosedCall Call, double[] Best)> Jobs(int count, DateOnly from, double jobsPerDay = 8) =>
        [.. Enumerable.Range(0, count).Select(i => Job(i, from.AddDays((int)(i / jobsPerDay))))];

    /// <summary>The best possible odds as forecasts.</summary>
    public IReadOnlyList<Forecast> Best(IReadOnlyList<(ClosedCall Call, double[] Best)> jobs) =>
        [.. jobs.Select(j => new Forecast(j.Call.JobId, j.Call.OpenedOn, j.Call.Call.ApplianceType, j.Call.Call.ComplaintKind, j.Best, Array.IndexOf(_needs, j.Call.Need)))];

    private (ClosedCall, double[]) Job(int i, DateOnly day)
    {
        int family = (int)(_rate.GetLength(0) * Math.Pow(_random.NextDouble(), 2));
        int type = family % Types.Length;
        double age = 0.5 + 14 * _random.NextDouble();
        double summer = -Math.Cos(2 * Math.PI * (day.Month - 0.5) / 12);
        double[] odds = [.. Enumerable.Range(0, _needs.Length).Select(k => Math.Exp(_rate[family, k] + (_shape[k] - 1) * Math.Log(age / 7) + _summer[k] * summer))];
        int need = Draw(odds);
        int kind = Draw(_shows[need * 2 + type]);
        double[] best = [.. odds.Select((o, k) => o * _shows[k * 2 + type][kind])];
        double sum = best.Sum();
        var call = new Call
        {
            ApplianceType = Types[type],
            Brand = $"brand {family % 5}",
            ModelFamily = $"F{family}",
            ModelNumber = $"F{family}-{_random.Next(3)}",
            AgeYears = age,
            AgeBasis = "date code",
            ComplaintKind = Kinds[kind],
            ComplaintText = $"{Types[type]} {Kinds[kind].Replace('_', ' ')} please come",
            CustomerKind = "household",
            Month = day.Month,
        };
        return (new ClosedCall($"J{i:D6}", day, day.AddDays(_random.Next(6)), $"U{_random.Next(1_000_000)}", _needs[need], call), [.. best.Select(b => b / sum)]);
    }

    private int Draw(double[] weights)
    {
        double at = _random.NextDouble() * weights.Sum();
        int k = 0;
        while (k < weights.Length - 1 && (at -= weights[k]) >= 0)
        {
            k++;
        }

        return k;
    }

    private double[] Shares(int n, double sharpness)
    {
        double[] weights = [.. Enumerable.Range(0, n).Select(_ => Math.Exp(sharpness * Normal()))];
        double sum = weights.Sum();
        return [.. weights.Select(w => w / sum)];
    }

    private double Normal() => Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());
}
