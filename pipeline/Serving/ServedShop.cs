using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Learning;
using PartsSignal.Pipeline.Publishing;
using PartsSignal.Pipeline.Reporting;

namespace PartsSignal.Pipeline.Serving;

/// <summary>One run as the server uses it, held in memory.</summary>
/// <param name="Output">Folder of the run.</param>
/// <param name="Answers">Answers questions from the run's predictor and store.</param>
/// <param name="DataUpTo">Last day the data covers, or null if there are no jobs.</param>
internal sealed record ServedShop(OutputFolder Output, ShopAnswers Answers, DateOnly? DataUpTo)
{
    /// <summary>Reads the last run.</summary>
    /// <exception cref="BadInputException">There is no run yet, or one of the shop's own tables has faults.</exception>
    public static ServedShop Read(OutputFolder output, string input)
    {
        var answers = ShopAnswers.Read(output, input);
        using Database database = CurrentStore.Open(output);
        return new ServedShop(output, answers, ReportMaker.LastDay(database, answers.Settings));
    }
}
