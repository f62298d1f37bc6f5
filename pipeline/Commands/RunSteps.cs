using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Learning;
using PartsSignal.Pipeline.Planning;
using PartsSignal.Pipeline.Reporting;
using PartsSignal.Pipeline.Running;

namespace PartsSignal.Pipeline.Commands;

/// <summary>The steps of <c>run</c>, in order.</summary>
internal static class RunSteps
{
    /// <summary>All of them.</summary>
    /// <param name="progress">Told now and then how far the reading is; null: nobody.</param>
    public static IReadOnlyList<IRunStep> All(ProgressLine? progress = null)
    {
        var learn = new LearnStep();
        var plan = new PlanStep();
        return
        [
            new LoadStep(progress),
            new StartBackgroundStep(learn, plan),
            new MonthsStep(),
            new RatesStep(),
            new CallbacksStep(),
            new SuppliersStep(),
            new CurvesStep(),
            new TrendsStep(),
            learn,
            plan,
            new PublishResultsStep(),
            new ReportStep(),
            new PhonePageStep(),
        ];
    }
}
