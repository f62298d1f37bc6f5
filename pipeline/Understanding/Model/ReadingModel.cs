using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Understanding.Model;

/// <summary>The fitted weights: a table by itself, then with the shop's other tables.</summary>
/// <param name="First">Columns by themselves.</param>
/// <param name="FirstKinds">Kinds by themselves.</param>
/// <param name="Second">Columns with those of other tables.</param>
/// <param name="SecondKinds">Kinds with those of other tables.</param>
internal sealed record ReadingModel(FieldModels First, KindModels FirstKinds, FieldModels Second, KindModels SecondKinds)
{
    private static readonly Lazy<ReadingModel> Own = new(() => Parse(WordTable.ReadDefault("reading-weights.txt")));

    /// <summary>The weights that are shipped.</summary>
    public static ReadingModel Shipped => Own.Value;

    /// <summary>The weights as text.</summary>
    public string Text() => string.Join('\n', Lines("1", First, FirstKinds).Concat(Lines("2", Second, SecondKinds))) + "\n";

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
            new FieldModels(models["1:common"], Of("1:field:")), new KindModels(Of("1:kind:")),
            new FieldModels(models["2:common"], Of("2:field:")), new KindModels(Of("2:kind:")));
    }

    private static IEnumerable<string> Lines(string look, FieldModels fields, KindModels kinds) =>
        fields.Common.Lines(look + ":common")
            .Concat(fields.Fields.OrderBy(f => f.Key, StringComparer.Ordinal).SelectMany(f => f.Value.Lines($"{look}:field:{f.Key}")))
            .Concat(kinds.Kinds.OrderBy(k => k.Key, StringComparer.Ordinal).SelectMany(k => k.Value.Lines($"{look}:kind:{k.Key}")));
}
