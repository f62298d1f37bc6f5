using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.Answers;
using PartsSignal.Analysis.Prediction.ModelFiles;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Learning;

namespace PartsSignal.Pipeline.Planning;

/// <summary>The jobs already booked, with their predicted needs.</summary>
internal static class BookedSource
{
    /// <summary>Reads and predicts them.</summary>
    /// <param name="database">A session over the store.</param>
    /// <param name="day">Last day the plan knows.</param>
    /// <param name="model">The predictor; null: there is none.</param>
    /// <param name="input">Folder with the shop's files, for its own checks.</param>
    /// <param name="settings">The shop's costs.</param>
    public static BookedJobs Read(Database database, DateOnly day, ShippedModel? model, string input, ShopSettings settings) => BookedJobs.Create(
        BookedCalls.Read(database),
        day,
        model,
        () => FactReader.Read(database, CheckTableReader.Load(input), []),
        ShopAnswers.Options(settings));
}
