using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Learning;
using PartsSignal.Pipeline.Planning;
using PartsSignal.Pipeline.Reporting;
using PartsSignal.Pipeline.Running;

namespace PartsSignal.Pipeline.FullRun;

/// <summary>The steps of <c>run</c>, in order.</summary>
internal static class RunSteps
{
    /// <summary>All of them.</summary>
    /// <param name="progress">Receives progress while reading, or null for no progress.</param>
    /// <param name="loaded">Called when everything is read, or null.</param>
    public static IReadOnlyList<IRunStep> All(IProgress<StageProgress>? progress = null, Action? loaded = null)
    {
        var learn = new LearnStep();
        var plan = new PlanStep();
        return
        [
            new LoadStep(progress, loaded),
            new StartBackgroundStep(learn, plan),
            new MonthsStep(),
            new RatesStep(),
            new CallbacksStep(),
            new SuppliersStep(),
            new CurvesStep(),
            new TrendsStep(),
            new BadBatchesStep(),
            learn,
            plan,
            new PublishResultsStep(),
            new ReportStep(),
            new PhonePageStep(),
        ];
    }
}
