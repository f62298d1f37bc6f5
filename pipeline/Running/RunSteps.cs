using PartsSignal.Pipeline.Running.Steps;

namespace PartsSignal.Pipeline.Running;

/// <summary>The steps of <c>run</c>, in order.</summary>
public static class RunSteps
{
    /// <summary>All of them.</summary>
    public static IReadOnlyList<IRunStep> All() =>
    [
        new LoadStep(),
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
