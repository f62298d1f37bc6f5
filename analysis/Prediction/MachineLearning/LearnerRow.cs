using Microsoft.ML;
using Microsoft.ML.Data;
using Microsoft.ML.Transforms;
using PartsSignal.Analysis.Prediction.LogOdds;
using PartsSignal.Analysis.Vocabulary;

namespace PartsSignal.Analysis.Prediction.MachineLearning;

/// <summary>A call in the mutable form the learning library reads.</summary>
internal sealed class LearnerRow
{
    public string Need { get; set; } = "";

    public string Text { get; set; } = "";

    public string[] Facts { get; set; } = [];

    public float[] Numbers { get; set; } = [];

    public float[] BackOff { get; set; } = [];

    /// <summary>Turns a call into a row.</summary>
    /// <param name="call">The call.</param>
    /// <param name="need">Its need; empty when asked.</param>
    /// <param name="backOff">Log odds of the back-off, without the call's own job where it was counted.</param>
    public static LearnerRow From(Call call, string need, double[]? backOff) => new()
    {
        Need = need,
        Text = (call.ComplaintText ?? "").ToLowerInvariant(),
        Facts =
        [
            $"type:{call.ApplianceType}",
            $"kind:{call.ComplaintKind}/{call.ApplianceType}",
            $"brand:{call.Brand}",
            $"family:{call.ModelFamily}",
            $"code:{call.ErrorCode}/{call.Brand}",
            $"customer:{call.CustomerKind}",
            $"age:{AgeBand.FromYears(call.AgeYears)?.ToString() ?? AgeBand.UnknownText}/{call.ApplianceType}",
            $"after:{call.Earlier.FirstOrDefault()?.Need}",
        ],
        Numbers =
        [
            call.AgeYears is { } years ? (float)CallFeatures.LogAge(years) : 0,
            call.AgeYears is null ? 1 : 0,
            (float)-Math.Cos(2 * Math.PI * (call.Month - 0.5) / 12),
            (float)Math.Sin(2 * Math.PI * (call.Month - 0.5) / 12),
            Math.Min(call.Earlier.Count, 5) / 5f,
            call.Earlier.Count == 0 ? 1 : (float)Math.Log(call.Earlier[0].DaysAgo) / 10,
        ],
        BackOff = backOff is null ? [0] : [.. backOff.Select(p => (float)Math.Log(Math.Max(p, 1e-6)))],
    };
}

/// <summary>Answer of the learning library: one score per need, in the order of the keys.</summary>
internal sealed class LearnerAnswer
{
    [ColumnName("Score")]
    public float[] Score { get; set; } = [];
}

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
