using PartsSignal.Pipeline.Running.Steps;
using PartsSignal.Pipeline.Staging;

namespace PartsSignal.Pipeline.Running;

/// <summary>The steps of <c>run</c>, in order.</summary>
public static class RunSteps
{
    /// <summary>All of them.</summary>
    /// <param name="progress">Told now and then how far the reading is; null: nobody.</param>
    public static IReadOnlyList<IRunStep> All(ProgressLine? progress = null) =>
    [
        new LoadStep(progress),
        new MonthsStep(),
        new RatesStep(),
        new CallbacksStep(),
        new SuppliersStep(),
        new CurvesStep(),
        new TrendsStep(),
        new LearnStep(),
        new PlanStep(),
        new PublishResultsStep(),
        new ReportStep(),
        new PhonePageStep(),
    ];
}
