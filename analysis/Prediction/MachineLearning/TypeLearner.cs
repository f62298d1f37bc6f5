using Microsoft.ML;
using Microsoft.ML.Data;

namespace PartsSignal.Analysis.Prediction.MachineLearning;

/// <summary>A trained pipeline of the learning library for one type of appliance.</summary>
internal sealed class TypeLearner
{
    private readonly Lock _gate = new();
    private readonly MLContext _context;
    private readonly ITransformer _pipeline;
    private readonly PredictionEngine<LearnerRow, LearnerAnswer> _engine;
    private readonly int _backOff;

    /// <summary>Wraps a pipeline whose rows carry so many odds of a back-off.</summary>
    public TypeLearner(MLContext context, ITransformer pipeline, int backOff)
    {
        (_context, _pipeline, _backOff) = (context, pipeline, backOff);
        _engine = context.Model.CreatePredictionEngine<LearnerRow, LearnerAnswer>(
            pipeline, ignoreMissingColumns: true, inputSchemaDefinition: LearnerSchema.For(backOff));
        VBuffer<ReadOnlyMemory<char>> names = default;
        _engine.OutputSchema["Score"].GetSlotNames(ref names);
        Needs = [.. names.DenseValues().Select(n => n.ToString())];
    }

    /// <summary>Needs it was shown, in the order of its scores.</summary>
    public IReadOnlyList<string> Needs { get; }

    /// <summary>One probability per need, summing to 1.</summary>
    public double[] Odds(LearnerRow row)
    {
        float[] scores;
        lock (_gate)
        {
            scores = _engine.Predict(row).Score;
        }

        double sum = scores.Sum(s => (double)Math.Max(s, 0));
        return [.. scores.Select(s => sum > 0 ? Math.Max(s, 0) / sum : 1.0 / scores.Length)];
    }

    /// <summary>The pipeline in the library's own archive form.</summary>
    public byte[] ToArchive()
    {
        using var stream = new MemoryStream();
        DataViewSchema rows = _context.Data.LoadFromEnumerable<LearnerRow>([], LearnerSchema.For(_backOff)).Schema;
        _context.Model.Save(_pipeline, rows, stream);
        return stream.ToArray();
    }

    /// <summary>The learner in an archive.</summary>
    public static TypeLearner FromArchive(byte[] archive, int backOff)
    {
        var context = new MLContext(0);
        using var stream = new MemoryStream(archive);
        return new TypeLearner(context, context.Model.Load(stream, out _), backOff);
    }
}
