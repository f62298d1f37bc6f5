using PartsSignal.Analysis.AgeCurves;
using PartsSignal.Analysis.Sql;

namespace PartsSignal.Pipeline.Running;

/// <summary>Age at failure by component and family, repairs per appliance, repeat failures, and the chance of the next 12 months.</summary>
internal sealed class CurvesStep : IRunStep
{
    /// <inheritdoc/>
    public string Name => "age curves";

    /// <inheritdoc/>
    public Task<long> RunAsync(RunContext context, CancellationToken cancellation)
    {
        context.BuildResults(ResultModels.Curves);
        AgeCurveTables curves = AgeCurveTables.Create(context.Database);
        cancellation.ThrowIfCancellationRequested();
        context.AddResult("age_curve_summary", curves.Summaries);
        context.AddResult("age_curve_points", curves.Points);
        context.AddResult("component_incidence", ComponentIncidence.Table(context.Database));
        context.AddResult("repairs_per_unit", RepairsPerUnit.Table(context.Database));
        context.AddResult("replaced_part_curve", ReplacedPartPoint.Table(context.Database));
        context.AddResult("next_year_risk", NextYearRiskTable.Create(context.Database));
        return Task.FromResult((long)curves.Summaries.Count);
    }
}
