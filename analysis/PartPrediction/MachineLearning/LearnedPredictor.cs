using Microsoft.ML;
using Microsoft.ML.Data;
using PartsSignal.Analysis.PartPrediction.BackOff;
using PartsSignal.Analysis.PartPrediction.Calls;

namespace PartsSignal.Analysis.PartPrediction.MachineLearning;

/// <summary>A trained pipeline of the learning library behind the predictor's interface.</summary>
public sealed class LearnedPredictor : IPredictor
{
    private readonly Lock _gate = new();
    private readonly PredictionEngine<LearnerRow, LearnerAnswer> _engine;

    private readonly MLContext _context;
    private readonly ITransformer _pipeline;

    internal LearnedPredictor(MLContext context, ITransformer pipeline, BackOffModel? backOff)
    {
        (_context, _pipeline, BackOff) = (context, pipeline, backOff);
        _engine = context.Model.CreatePredictionEngine<LearnerRow, LearnerAnswer>(
            pipeline, ignoreMissingColumns: true, inputSchemaDefinition: LearnerSchema.For(backOff?.Needs.Count ?? 0));
        VBuffer<ReadOnlyMemory<char>> names = default;
        _engine.OutputSchema["Score"].GetSlotNames(ref names);
        Needs = [.. names.DenseValues().Select(n => n.ToString())];
    }

    /// <inheritdoc/>
    public IReadOnlyList<string> Needs { get; }

    /// <summary>The back-off whose odds it takes as facts; null: none.</summary>
    public BackOffModel? BackOff { get; }

    /// <inheritdoc/>
    public double[] Odds(Call call)
    {
        LearnerRow row = LearnerRow.Of(call, "", BackOff?.Odds(call));
        float[] scores;
        lock (_gate)
        {
            scores = _engine.Predict(row).Score;
        }

        double sum = scores.Sum(s => (double)Math.Max(s, 0));
        return [.. scores.Select(s => sum > 0 ? Math.Max(s, 0) / sum : 1.0 / scores.Length)];
    }

    /// <summary>The trained pipeline in the library's own archive form.</summary>
    public byte[] ToArchive()
    {
        using var stream = new MemoryStream();
        DataViewSchema rows = _context.Data.LoadFromEnumerable<LearnerRow>([], LearnerSchema.For(BackOff?.Needs.Count ?? 0)).Schema;
        _context.Model.Save(_pipeline, rows, stream);
        return stream.ToArray();
    }

    /// <summary>The predictor in an archive.</summary>
    /// <param name="archive">Bytes of <see cref="ToArchive"/>.</param>
    /// <param name="backOff">The back-off it stood on; null: none.</param>
    public static LearnedPredictor FromArchive(byte[] archive, BackOffModel? backOff)
    {
        var context = new MLContext(0);
        using var stream = new MemoryStream(archive);
        return new LearnedPredictor(context, context.Model.Load(stream, out _), backOff);
    }
}
