using Microsoft.ML;
using Microsoft.ML.Data;
using PartsSignal.Analysis.Prediction.ModelFiles;

namespace PartsSignal.Analysis.Prediction.OddsPipeline;

/// <summary>
/// The part predictor as a model of the learning library: from a table of calls (<see cref="CallInput"/>) to the odds of each
/// need (<see cref="CallOdds"/>). Custom mappings turn a call into facts, value mappings hold what was learned, a mapping that
/// keeps nothing adds it up. Everything is managed code.
/// </summary>
public static class PartOddsPipeline
{
    /// <summary>Writes a model in the library's own file form. The same model gives the same bytes.</summary>
    /// <param name="stream">Where it goes; left open.</param>
    /// <param name="model">The model; must know at least one need.</param>
    /// <exception cref="ArgumentException">The model knows no need.</exception>
    public static void Save(Stream stream, ShippedModel model)
    {
        var context = new MLContext(0);
        ITransformer pipeline = Create(context, model);
        using var written = new MemoryStream();
        context.Model.Save(pipeline, Calls(context, []).Schema, written);
        written.Position = 0;
        StableZip.Copy(written, stream);
    }

    /// <summary>
    /// Reads a model file, registering the mappings it names. A program may as well register this assembly itself
    /// (<c>context.ComponentCatalog.RegisterAssembly</c>) and call <c>context.Model.Load</c>.
    /// </summary>
    /// <param name="context">The library's context.</param>
    /// <param name="path">Path of the file.</param>
    public static ITransformer Load(MLContext context, string path)
    {
        context.ComponentCatalog.RegisterAssembly(typeof(PartOddsPipeline).Assembly);
        return context.Model.Load(path, out _);
    }

    /// <summary>Calls as a table of the library.</summary>
    public static IDataView Calls(MLContext context, IEnumerable<CallInput> calls) => context.Data.LoadFromEnumerable(calls);

    /// <summary>The needs a table of odds gives odds of, in the order of its slots.</summary>
    /// <param name="odds">Table with a column <c>Score</c>.</param>
    public static IReadOnlyList<string> Needs(IDataView odds)
    {
        VBuffer<ReadOnlyMemory<char>> names = default;
        odds.Schema[CallOdds.ScoreColumn].GetSlotNames(ref names);
        return RowTexts.Of(names);
    }

    /// <summary>The pipeline of a model.</summary>
    internal static ITransformer Create(MLContext context, ShippedModel model)
    {
        ArgumentOutOfRangeException.ThrowIfZero(model.Needs.Count, nameof(model));
        LearnedTables tables = LearnedTables.From(model);
        IDataView outline = context.Data.LoadFromEnumerable([new OutlineEntry { Key = WordsMapping.OutlineKey, Value = [.. tables.Outline] }]);
        IDataView words = context.Data.LoadFromEnumerable(tables.Words.Select(w => new TextEntry { Key = w.Key, Value = w.Value }));
        IDataView kinds = context.Data.LoadFromEnumerable(tables.Kinds.Select(k => new NumberEntry { Key = k.Key, Value = k.Value }));
        IDataView numbers = context.Data.LoadFromEnumerable(tables.Numbers.Select(n => new NumberEntry { Key = n.Key, Value = n.Value }));
        return context.Transforms.CustomMapping(new WordsMapping().GetMapping(), Contracts.Words)
            .Append(Look(context, nameof(CallWithWords.Outline), outline, nameof(WordsRow.OutlineKey)))
            .Append(Look(context, nameof(CallWithWords.WordsFound), words, nameof(WordsRow.WordsAsked)))
            .Append(context.Transforms.CustomMapping(new KindsMapping().GetMapping(), Contracts.Kinds))
            .Append(Look(context, nameof(CallWithKinds.KindsFound), kinds, nameof(KindsRow.KindsAsked)))
            .Append(context.Transforms.CustomMapping(new FactsMapping().GetMapping(), Contracts.Facts))
            .Append(Look(context, nameof(CallWithNumbers.NumbersFound), numbers, nameof(FactsRow.NumbersAsked)))
            .Append(context.Transforms.CustomMapping(new OddsMapping().GetMapping(), Contracts.Odds))
            .Append(SlotNames.Naming(context, model.Needs))
            .Append(context.Transforms.DropColumns([.. Helpers, .. SlotNames.Helpers, .. model.Needs]))
            .Fit(Calls(context, []));
    }

    private static string[] Helpers =>
    [
        nameof(WordsRow.OutlineKey), nameof(WordsRow.WordsAsked), nameof(CallWithWords.Outline), nameof(CallWithWords.WordsFound), nameof(KindsRow.Stems), nameof(KindsRow.TypeStems),
        nameof(KindsRow.KindsAsked), nameof(CallWithKinds.KindsFound), nameof(FactsRow.NumbersAsked), nameof(CallWithNumbers.NumbersFound),
    ];

    private static IEstimator<ITransformer> Look(MLContext context, string output, IDataView map, string input) =>
        context.Transforms.Conversion.MapValue(output, map, map.Schema["Key"], map.Schema["Value"], input);

    private sealed class OutlineEntry
    {
        public string Key { get; set; } = "";

        public string[] Value { get; set; } = [];
    }

    private sealed class TextEntry
    {
        public string Key { get; set; } = "";

        public string Value { get; set; } = "";
    }

    private sealed class NumberEntry
    {
        public string Key { get; set; } = "";

        public double Value { get; set; }
    }
}
