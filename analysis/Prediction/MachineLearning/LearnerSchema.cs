using Microsoft.ML;
using Microsoft.ML.Data;
using Microsoft.ML.Transforms;

namespace PartsSignal.Analysis.Prediction.MachineLearning;

/// <summary>Columns of the learning library's rows: vectors need their lengths named.</summary>
internal static class LearnerSchema
{
    /// <summary>Column of the need as a key.</summary>
    public const string NeedKey = "NeedKey";

    /// <summary>Facts and numbers of one row.</summary>
    private const int Facts = 8;
    private const int Numbers = 6;

    /// <summary>The schema, with so many back-off odds.</summary>
    public static SchemaDefinition For(int backOff)
    {
        var schema = SchemaDefinition.Create(typeof(LearnerRow));
        schema[nameof(LearnerRow.Facts)].ColumnType = new VectorDataViewType(TextDataViewType.Instance, Facts);
        schema[nameof(LearnerRow.Numbers)].ColumnType = new VectorDataViewType(NumberDataViewType.Single, Numbers);
        schema[nameof(LearnerRow.BackOff)].ColumnType = new VectorDataViewType(NumberDataViewType.Single, Math.Max(backOff, 1));
        return schema;
    }

    /// <summary>Needs as keys in ordinal order: the library's own order is that of first sight.</summary>
    public static IEstimator<ITransformer> KeyNeeds(MLContext context) =>
        context.Transforms.Conversion.MapValueToKey(NeedKey, nameof(LearnerRow.Need), keyOrdinality: ValueToKeyMappingEstimator.KeyOrdinality.ByValue);
}
