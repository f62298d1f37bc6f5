using PartsSignal.Analysis.Prediction.LogOdds;

namespace PartsSignal.Analysis.Prediction.OddsPipeline;

/// <summary>Gives the learned numbers by name, in the order they are asked for.</summary>
internal interface ILearnedNumbers
{
    /// <summary>The number with a name; 0 if nothing was learned under it.</summary>
    double Next(string table, string fact, string outcome);
}

/// <summary>Writes down the names of the numbers that an answer needs, in order. All its numbers are 1.</summary>
internal sealed class NumberNames : ILearnedNumbers
{
    /// <summary>The names so far.</summary>
    public List<string> Names { get; } = [];

    /// <inheritdoc/>
    public double Next(string table, string fact, string outcome)
    {
        Names.Add(Outline.Line(table, fact, outcome));
        return 1;
    }
}

/// <summary>Hands out numbers that were looked up before, in the order of their names.</summary>
internal sealed class FoundNumbers(ReadOnlyMemory<double> numbers) : ILearnedNumbers
{
    private int _at;

    /// <inheritdoc/>
    public double Next(string table, string fact, string outcome)
    {
        double number = numbers.Span[_at++];
        return double.IsNaN(number) ? 0 : number;
    }
}

/// <summary>A complaint as one table of weights reads it.</summary>
/// <param name="Kind">Its kind.</param>
/// <param name="Stems">Stems of its known words.</param>
internal readonly record struct ReadComplaint(string Kind, IReadOnlyList<string> Stems);

/// <summary>
/// The odds of a call from learned numbers that come from outside. Which numbers are asked for, and in which order, follows
/// from the call and the outline alone, so the same code first names them and then adds them up.
/// </summary>
internal sealed class OddsSum(Outline outline, ReadComplaint complaint, ReadComplaint complaintForType, ILearnedNumbers numbers)
{
    /// <summary>Names of the tables of numbers.</summary>
    public const string Weights = "need", TypeWeights = "type", Counts = "count", Alpha = "alpha", Stack = "stack", Temperature = "temperature", Untyped = "untyped";

    private readonly Dictionary<string, int> _places = NeedList.Places(outline[Outline.NeedSection]);

    /// <summary>One probability per need of the outline.</summary>
    public double[] Odds(Call call)
    {
        double[] odds = Members(call);
        IReadOnlyList<string> types = outline[Outline.OutcomesOf(TypeWeights)];
        if (types.Count > 0 && TypeReader.Concerns(call))
        {
            double untyped = numbers.Next(Untyped, "", "");
            double[] ofType = Table(TypeWeights, TypeReader.Blind(call), complaintForType);
            (double Odds, double[] Given)[] given = [.. types.Select((type, t) => (ofType[t], Members(call with { ApplianceType = type })))];
            odds = TypeReader.Sum(odds, untyped, given.Where(g => g.Odds >= TypeReader.LeastOdds).OrderByDescending(g => g.Odds));
        }

        return TemperatureScaling.Apply(odds, numbers.Next(Temperature, "", ""));
    }

    private double[] Members(Call call)
    {
        IReadOnlyList<string> members = outline[Outline.MemberSection];
        double[][] odds = [.. members.Select(m => m == Weights
            ? Placed(outline[Outline.OutcomesOf(Weights)], Table(Weights, call, complaint))
            : Placed(outline[Outline.BackOffSection], BackOff(call)))];
        return odds.Length == 1
            ? odds[0]
            : StackWeights.Pool([.. odds.Select(StackWeights.Logs)], [.. members.Select(m => numbers.Next(Stack, m, ""))]);
    }

    private double[] Placed(IReadOnlyList<string> needs, double[] odds)
    {
        var all = new double[_places.Count];
        for (int k = 0; k < odds.Length; k++)
        {
            all[_places[needs[k]]] = odds[k];
        }

        return all;
    }

    /// <summary>Sums the weights of the call's facts, then makes the sums odds. The name of the overall shares is an empty fact.</summary>
    private double[] Table(string table, Call call, ReadComplaint read)
    {
        IReadOnlyList<string> outcomes = outline[Outline.OutcomesOf(table)];
        int[] allowed = outline.Allowed(table, call.ApplianceType);
        var sums = new double[outcomes.Count];
        foreach (Feature feature in CallFeatures.From(call with { ComplaintKind = read.Kind }, read.Stems))
        {
            foreach (int k in allowed)
            {
                if (feature.OnlyNeed is null)
                {
                    sums[k] += feature.Value * numbers.Next(table, feature.Key, outcomes[k]);
                }
                else if (feature.OnlyNeed == outcomes[k])
                {
                    sums[k] += feature.Value * (numbers.Next(table, feature.Key, outcomes[k]) + numbers.Next(table, LogOddsShape.Shared(feature.Key), ""));
                }
            }
        }

        LogOddsModel.Normalize(sums, allowed, [.. outcomes.Select(o => numbers.Next(table, "", o))]);
        return sums;
    }

    private double[] BackOff(Call call)
    {
        IReadOnlyList<string> needs = outline[Outline.BackOffSection];
        double[] shares = Smoothing.Uniform(needs.Count);
        foreach (string name in outline[Outline.LevelSection])
        {
            if (BackOffLevel.Every.First(l => l.Name == name).Key(call) is { } key)
            {
                double alpha = numbers.Next(Alpha, name, "");
                int[] counts = [.. needs.Select(n => (int)numbers.Next(Counts, Outline.Line(name, key), n))];
                shares = Smoothing.Towards(counts, alpha, shares);
            }
        }

        return shares;
    }
}
