using PartsSignal.Analysis.Months;
using PartsSignal.Analysis.Sql;

namespace PartsSignal.Pipeline.Running;

/// <summary>The calls of each month in figures: what the monthly report opens with.</summary>
internal sealed class MonthsStep : IRunStep
{
    /// <inheritdoc/>
    public string Name => "months";

    /// <inheritdoc/>
    public Task<long> RunAsync(RunContext context, CancellationToken cancellation)
    {
        context.BuildResults(ResultModels.Months);
        IReadOnlyList<MonthFigure> months = MonthFigure.Table(context.Database);
        context.AddResult("month_figures", months);
        context.AddResult("month_needs", MonthNeed.Table(context.Database));
        context.AddResult("month_families", MonthFamily.Table(context.Database));
        return Task.FromResult((long)months.Count);
    }
}
