using System.Text.Json;
using PartsSignal.Pipeline.Understanding;

namespace PartsSignal.Benchmarks.Fitting;

/// <summary>What is said of a table that was not learned from, beside what is right.</summary>
/// <param name="Set">Its set.</param>
/// <param name="Sort">real, made, dialect or sample.</param>
/// <param name="Table">Its file and sheet.</param>
/// <param name="Truth">The right reading.</param>
/// <param name="Kinds">Chances of <see cref="KindModels.Names"/>.</param>
/// <param name="Needed">How well the needs of the best kind are met.</param>
/// <param name="Headers">Its headers, or what stands for them.</param>
/// <param name="Odds">Log odds by column and field, as the kind that it is and the one it is taken for.</param>
internal sealed record HeldOutTable(
    string Set,
    string Sort,
    string Table,
    TableTruth Truth,
    IReadOnlyList<double> Kinds,
    double Needed,
    IReadOnlyList<string> Headers,
    IReadOnlyDictionary<string, double[][]> Odds)
{
    private static readonly JsonSerializerOptions Lower = new() { PropertyNamingPolicy = JsonNamingPolicy.CamelCase };

    /// <summary>A table of a set.</summary>
    public static HeldOutTable Of(TruthSet set, int at, SecondLook second, ReadingModel model)
    {
        TableTruth truth = set.Truth[at];
        double[] kinds = truth.Columns.Count == 0 ? [.. KindModels.Names.Select(k => k == KindModels.None ? 1.0 : 0)] : model.SecondKinds.Chances(second.KindLevels(at));
        string taken = KindModels.Names[Array.IndexOf(kinds, kinds.Max())];
        return new HeldOutTable(
            set.Name, set.Sort, truth.Name, truth, kinds, second.First.Fits(at)[^1].Needed,
            [.. set.Evidence.Tables[at].Columns.Select(c => c.Header)],
            new[] { taken, truth.Kind }.Where(k => k != KindModels.None).Distinct().ToDictionary(k => k, k => Rows(second.Odds(at, k, model.Second))));
    }

    /// <summary>One line of text.</summary>
    public string ToJson() => JsonSerializer.Serialize(this, Lower);

    private static double[][] Rows(double[,] odds) =>
        [.. Enumerable.Range(0, odds.GetLength(0)).Select(c => Enumerable.Range(0, odds.GetLength(1)).Select(f => Math.Round(odds[c, f], 2)).ToArray())];
}
