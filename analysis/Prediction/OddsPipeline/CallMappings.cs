using Microsoft.ML.Data;
using Microsoft.ML.Transforms;
using PartsSignal.Analysis.Prediction.LogOdds;
using PartsSignal.Analysis.Vocabulary;

namespace PartsSignal.Analysis.Prediction.OddsPipeline;

/// <summary>Names of the mappings in a model file. A file is read by the code with these names, so a name's meaning never changes.</summary>
internal static class Contracts
{
    public const string Words = "PartsSignal.CallWords", Kinds = "PartsSignal.CallKinds", Facts = "PartsSignal.CallFacts", Odds = "PartsSignal.PartOdds", Slots = "PartsSignal.NextSlots";
}

/// <summary>What to look up to read the complaint of a call.</summary>
internal sealed class WordsRow
{
    public string OutlineKey { get; set; } = "";

    public string[] WordsAsked { get; set; } = [];
}

/// <summary>A call with its words looked up.</summary>
internal sealed class CallWithWords : CallInput
{
    public VBuffer<ReadOnlyMemory<char>> Outline { get; set; }

    public VBuffer<ReadOnlyMemory<char>> WordsFound { get; set; }
}

/// <summary>The stems of the complaint, and what to look up to find its kind.</summary>
internal sealed class KindsRow
{
    public string[] Stems { get; set; } = [];

    public string[] TypeStems { get; set; } = [];

    public string[] KindsAsked { get; set; } = [];
}

/// <summary>A call whose kind can be told.</summary>
internal class CallWithKinds : CallInput
{
    public VBuffer<ReadOnlyMemory<char>> Outline { get; set; }

    public VBuffer<ReadOnlyMemory<char>> Stems { get; set; }

    public VBuffer<ReadOnlyMemory<char>> TypeStems { get; set; }

    public VBuffer<double> KindsFound { get; set; }

    /// <summary>The odds from numbers that come from outside.</summary>
    public (double[] Odds, Outline Outline) Sum(ILearnedNumbers numbers)
    {
        var outline = new Outline(RowTexts.Of(Outline));
        Call call = ToCall();
        var kinds = new FoundNumbers(KindsFound.DenseValues().ToArray());
        ReadComplaint complaint = Read(OddsSum.Weights, call, outline, RowTexts.Of(Stems), kinds);
        ReadComplaint forType = TypeReader.Concerns(call) ? Read(OddsSum.TypeWeights, call, outline, RowTexts.Of(TypeStems), kinds) : default;
        return (new OddsSum(outline, complaint, forType, numbers).Odds(call), outline);
    }

    /// <summary>Reads the complaint as a table does.</summary>
    /// <param name="table">The table of weights.</param>
    /// <param name="call">The call.</param>
    /// <param name="outline">The model's outline.</param>
    /// <param name="stems">Stems of the known words.</param>
    /// <param name="numbers">Log odds of the stems by kind.</param>
    internal static ReadComplaint Read(string table, Call call, Outline outline, string[] stems, ILearnedNumbers numbers)
    {
        IReadOnlyList<string> kinds = outline[OddsPipeline.Outline.KindsOf(table)];
        if (call.ComplaintKind != Need.OtherComplaint || kinds.Count == 0)
        {
            return new ReadComplaint(call.ComplaintKind, stems);
        }

        double[] scores = [.. kinds.Select(k => numbers.Next(table, "", k))];
        foreach (string stem in stems)
        {
            for (int k = 0; k < scores.Length; k++)
            {
                scores[k] += numbers.Next(table, stem, kinds[k]);
            }
        }

        return new ReadComplaint(LearnedComplaintReader.Clearest(kinds, scores) ?? call.ComplaintKind, stems);
    }
}

/// <summary>What to look up to answer a call: the facts of the call, each with every need it may speak about.</summary>
internal sealed class FactsRow
{
    public string[] NumbersAsked { get; set; } = [];
}

/// <summary>A call with its numbers looked up.</summary>
internal sealed class CallWithNumbers : CallWithKinds
{
    public VBuffer<double> NumbersFound { get; set; }
}

/// <summary>The odds without the names of the needs.</summary>
internal sealed class BareOddsRow
{
    public float[] OddsLeft { get; set; } = [];

    public string PredictedNeed { get; set; } = "";
}

/// <summary>Splits the complaint into words and names what to look up for each.</summary>
[CustomMappingFactoryAttribute(Contracts.Words)]
internal sealed class WordsMapping : CustomMappingFactory<CallInput, WordsRow>
{
    /// <summary>The one row of the outline's table.</summary>
    public const string OutlineKey = "outline";

    public override Action<CallInput, WordsRow> GetMapping() => static (row, asked) =>
    {
        Call call = row.ToCall();
        IReadOnlyList<string> words = ComplaintWords.Split(call.ComplaintText);
        asked.OutlineKey = OutlineKey;
        asked.WordsAsked = [.. Tables(call).SelectMany(t => words.SelectMany(WordSlips.Asked).Select(w => Outline.Line(t, w)))];
    };

    /// <summary>Tables that read the complaint of a call.</summary>
    public static string[] Tables(Call call) => TypeReader.Concerns(call) ? [OddsSum.Weights, OddsSum.TypeWeights] : [OddsSum.Weights];
}

/// <summary>Finds the stems that the words mean, and names what to look up to tell the kind of the complaint.</summary>
[CustomMappingFactoryAttribute(Contracts.Kinds)]
internal sealed class KindsMapping : CustomMappingFactory<CallWithWords, KindsRow>
{
    public override Action<CallWithWords, KindsRow> GetMapping() => static (row, asked) =>
    {
        Call call = row.ToCall();
        var outline = new Outline(RowTexts.Of(row.Outline));
        string[] found = RowTexts.Of(row.WordsFound);
        var names = new NumberNames();
        asked.TypeStems = [];
        int at = 0;
        foreach (string table in WordsMapping.Tables(call))
        {
            var stems = new List<string>();
            foreach (string word in ComplaintWords.Split(call.ComplaintText))
            {
                int count = WordSlips.Count(word);
                if (WordSlips.Stem(word, found.AsSpan(at, count)) is { } stem && !stems.Contains(stem))
                {
                    stems.Add(stem);
                }

                at += count;
            }

            string[] own = [.. stems];
            (asked.Stems, asked.TypeStems) = table == OddsSum.Weights ? (own, asked.TypeStems) : (asked.Stems, own);
            CallWithKinds.Read(table, call, outline, own, names);
        }

        asked.KindsAsked = [.. names.Names];
    };
}

/// <summary>Turns a call into its facts and names the learned number of each fact and need.</summary>
[CustomMappingFactoryAttribute(Contracts.Facts)]
internal sealed class FactsMapping : CustomMappingFactory<CallWithKinds, FactsRow>
{
    public override Action<CallWithKinds, FactsRow> GetMapping() => static (row, asked) =>
    {
        var names = new NumberNames();
        row.Sum(names);
        asked.NumbersAsked = [.. names.Names];
    };
}

/// <summary>Adds up the numbers of the facts and turns the sums into odds.</summary>
[CustomMappingFactoryAttribute(Contracts.Odds)]
internal sealed class OddsMapping : CustomMappingFactory<CallWithNumbers, BareOddsRow>
{
    public override Action<CallWithNumbers, BareOddsRow> GetMapping() => static (row, answer) =>
    {
        (double[] odds, Outline outline) = row.Sum(new FoundNumbers(row.NumbersFound.DenseValues().ToArray()));
        answer.OddsLeft = [.. odds.Select(o => (float)o)];
        answer.PredictedNeed = odds.Length == 0 ? "" : outline[Outline.NeedSection][Array.IndexOf(odds, odds.Max())];
    };
}

/// <summary>Texts of a column.</summary>
internal static class RowTexts
{
    public static string[] Of(in VBuffer<ReadOnlyMemory<char>> texts) => [.. texts.DenseValues().Select(t => t.ToString())];
}
