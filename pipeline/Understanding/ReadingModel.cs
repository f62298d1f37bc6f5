using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>The fitted weights: a table by itself, then with the shop's other tables.</summary>
/// <param name="First">Columns by themselves.</param>
/// <param name="FirstKinds">Kinds by themselves.</param>
/// <param name="Second">What the other columns of the table and of the shop add.</param>
/// <param name="SecondKinds">Kinds with those of other tables.</param>
internal sealed record ReadingModel(FieldModels First, KindModels FirstKinds, TreeModel Second, KindModels SecondKinds)
{
    private static readonly Lazy<ReadingModel> Own = new(() => Parse(WordTable.ReadDefault("reading-weights.txt")));

    /// <summary>The weights that are shipped.</summary>
    public static ReadingModel Shipped => Own.Value;

    /// <summary>The weights as text.</summary>
    public string Text() => string.Join('\n', First.Common.Lines("1:common")
        .Concat(First.Fields.OrderBy(f => f.Key, StringComparer.Ordinal).SelectMany(f => f.Value.Lines("1:field:" + f.Key)))
        .Concat(Lines("1", FirstKinds))
        .Concat(Second.Lines("2:fields"))
        .Concat(Lines("2", SecondKinds))) + "\n";

    /// <summary>Reads weights.</summary>
    public static ReadingModel Parse(string text)
    {
        using var lines = new StringReader(text);
        var models = new Dictionary<string, TreeModel>(StringComparer.Ordinal);
        while (lines.Peek() >= 0)
        {
            (string name, TreeModel model) = TreeModel.Read(lines);
            models.Add(name, model);
        }

        Dictionary<string, TreeModel> Of(string prefix) => models.Where(m => m.Key.StartsWith(prefix, StringComparison.Ordinal)).ToDictionary(m => m.Key[prefix.Length..], m => m.Value, StringComparer.Ordinal);
        return new ReadingModel(
            new FieldModels(models["1:common"], Of("1:field:")), new KindModels(models["1:kinds"], Of("1:kind:")),
            models["2:fields"], new KindModels(models["2:kinds"], Of("2:kind:")));
    }

    private static IEnumerable<string> Lines(string look, KindModels kinds) =>
        kinds.Common.Lines(look + ":kinds").Concat(kinds.Kinds.OrderBy(k => k.Key, StringComparer.Ordinal).SelectMany(k => k.Value.Lines($"{look}:kind:{k.Key}")));
}
