using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics.Shrinkage;
using PartsSignal.Analysis.Suppliers;

namespace PartsSignal.Pipeline.Running;

/// <summary>Supplier quality and lead times; runs after the callbacks, whose followed parts it counts.</summary>
internal sealed class SuppliersStep : IRunStep
{
    /// <inheritdoc/>
    public string Name => "suppliers";

    /// <inheritdoc/>
    public Task<long> RunAsync(RunContext context, CancellationToken cancellation)
    {
        context.BuildResults(ResultModels.Suppliers);
        IReadOnlyList<SupplierPart> parts = SupplierQualityTable.Create(SupplierCount.Read(context.Database), new EffectGate());
        IReadOnlyList<LeadTime> times = LeadTime.Table(context.Database);
        context.AddResult("supplier_quality", parts);
        context.AddResult("lead_times", times);
        return Task.FromResult((long)parts.Count + times.Count);
    }
}
