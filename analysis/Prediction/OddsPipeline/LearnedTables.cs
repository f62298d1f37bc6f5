using PartsSignal.Analysis.Prediction.LogOdds;
using PartsSignal.Analysis.Prediction.ModelFiles;

namespace PartsSignal.Analysis.Prediction.OddsPipeline;

/// <summary>Everything a model has learned, as tables of text to number that value mappings can hold. What is 0 is left out.</summary>
internal sealed class LearnedTables
{
    private readonly List<string> _outline = [];

    /// <summary>Lines of the <see cref="OddsPipeline.Outline"/>.</summary>
    public IReadOnlyList<string> Outline => _outline;

    /// <summary>Known words under the texts of <see cref="WordSlips"/>.</summary>
    public SortedDictionary<string, string> Words { get; } = new(StringComparer.Ordinal);

    /// <summary>Log odds by which stems point to a kind of complaint.</summary>
    public SortedDictionary<string, double> Kinds { get; } = new(StringComparer.Ordinal);

    /// <summary>Weights, counts, and the temperature.</summary>
    public SortedDictionary<string, double> Numbers { get; } = new(StringComparer.Ordinal);

    /// <summary>The tables of a model.</summary>
    /// <exception cref="ArgumentException">The model has a member without such tables.</exception>
    public static LearnedTables From(ShippedModel model)
    {
        var tables = new LearnedTables();
        tables.List(OddsPipeline.Outline.NeedSection, model.Needs);
        (IReadOnlyList<IPredictor> members, IReadOnlyList<double> weights) = model.Predictor is StackedPredictor stack ? (stack.Members, stack.Weights) : ([model.Predictor], [1.0]);
        for (int m = 0; m < members.Count; m++)
        {
            string name = tables.Member(members[m]);
            tables.List(OddsPipeline.Outline.MemberSection, [name]);
            tables.Number(OddsSum.Stack, name, "", weights[m]);
        }

        if (model.Types is { } types)
        {
            tables.Table(OddsSum.TypeWeights, types.Types);
            tables.Number(OddsSum.Untyped, "", "", types.Untyped);
        }

        tables.Number(OddsSum.Temperature, "", "", model.Temperature);
        return tables;
    }

    private string Member(IPredictor member)
    {
        switch (member)
        {
            case LogOddsModel sums:
                Table(OddsSum.Weights, sums);
                return OddsSum.Weights;
            case BackOffModel counts:
                Count(counts);
                return OddsSum.Counts;
            default:
                throw new ArgumentException($"A {member.GetType().Name} cannot be put into value mappings.", nameof(member));
        }
    }

    private void Table(string table, LogOddsModel model)
    {
        LogOddsShape shape = model.Shape;
        List(OddsPipeline.Outline.OutcomesOf(table), shape.Needs);
        List(OddsPipeline.Outline.AllowedOf(table), shape.Allowed.OrderBy(a => a.Key, StringComparer.Ordinal)
            .SelectMany(a => a.Value.Select(k => OddsPipeline.Outline.Line(a.Key, shape.Needs[k]))));
        Read(table, shape.Kinds);
        for (int k = 0; k < shape.Needs.Count; k++)
        {
            Number(table, "", shape.Needs[k], model.Background[k]);
        }

        for (int f = 0; f < shape.Space.Count; f++)
        {
            string fact = shape.Space.Features[f].Key;
            ReadOnlySpan<double> weights = model.WeightsOf(f);
            for (int k = 0; k < weights.Length; k++)
            {
                Number(table, fact, shape.Needs[k], weights[k]);
            }

            if (LogOddsShape.IsShared(fact))
            {
                Number(table, fact, "", weights[0]);
            }
        }
    }

    private void Read(string table, LearnedComplaintReader kinds)
    {
        List(OddsPipeline.Outline.KindsOf(table), kinds.Kinds);
        foreach ((string asked, string meaning) in WordSlips.Stored(kinds.Words.Words))
        {
            Words.Add(OddsPipeline.Outline.Line(table, asked), meaning);
        }

        for (int k = 0; k < kinds.Kinds.Count; k++)
        {
            Kinds.Add(OddsPipeline.Outline.Line(table, "", kinds.Kinds[k]), kinds.Prior[k]);
            foreach ((string stem, double[] logs) in kinds.Logs)
            {
                Kinds.Add(OddsPipeline.Outline.Line(table, stem, kinds.Kinds[k]), logs[k]);
            }
        }
    }

    private void Count(BackOffModel counts)
    {
        List(OddsPipeline.Outline.BackOffSection, counts.Needs);
        List(OddsPipeline.Outline.LevelSection, counts.Levels.Select(l => l.Level.Name));
        foreach (BackOffCounts level in counts.Levels)
        {
            Number(OddsSum.Alpha, level.Level.Name, "", level.Alpha);
            foreach ((string key, int[] group) in level.Groups)
            {
                for (int k = 0; k < group.Length; k++)
                {
                    Number(OddsSum.Counts, OddsPipeline.Outline.Line(level.Level.Name, key), counts.Needs[k], group[k]);
                }
            }
        }
    }

    private void List(string section, IEnumerable<string> items) => _outline.AddRange(items.Select(i => OddsPipeline.Outline.Line(section, i)));

    private void Number(string table, string fact, string outcome, double number)
    {
        if (number != 0)
        {
            Numbers.Add(OddsPipeline.Outline.Line(table, fact, outcome), number);
        }
    }
}
