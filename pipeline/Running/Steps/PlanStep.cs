using System.Text.Json.Nodes;
using PartsSignal.Analysis.PartPrediction.Learning;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.VanPlan.Booked;
using PartsSignal.Analysis.VanPlan.Data;
using PartsSignal.Analysis.VanPlan.Evidence;
using PartsSignal.Pipeline.Planning;

namespace PartsSignal.Pipeline.Running.Steps;

/// <summary>What each van should carry, judged by replay, with its lists.</summary>
public sealed class PlanStep : IRunStep
{
    private const string Checks = "Van";

    /// <inheritdoc/>
    public string Name => "van plan";

    /// <inheritdoc/>
    public Task<long> RunAsync(RunContext context, CancellationToken cancellation)
    {
        VanPlanOptions options = ShopPlanOptions.From(context.Settings);
        if (ShopDataReader.Read(context.Database, context.Settings.AsOf) is not { } data)
        {
            context.Record["van"] = new JsonObject { ["jobs_replayed"] = 0, ["answer"] = "no jobs: nothing tells what a van needs" };
            return Task.FromResult(0L);
        }

        var views = new ShopViews(data, options);
        var learned = context.Shared.GetValueOrDefault(typeof(Learned)) as Learned;
        BookedJobs booked = BookedSource.Read(context.Database, data.AsOf, learned?.Model, context.Input, context.Settings);
        ShopPlan plan = ShopPlan.Of(data, views, options, context.Settings.ServiceTarget, booked);
        cancellation.ThrowIfCancellationRequested();
        ReplayEvidence evidence = RollingReplay.Run(data, views, options);
        IReadOnlyList<EvidenceRow> rows = EvidenceRow.Of(evidence.Rows, options);
        cancellation.ThrowIfCancellationRequested();
        context.AddResult("van_summary", plan.Summaries, Checks);
        context.AddResult("van_plan", plan.Rows, Checks);
        context.AddResult("van_changes", plan.Changes, Checks);
        context.AddResult("van_orders", plan.Orders, Checks);
        context.AddResult("van_booked", plan.Booked, Checks);
        context.AddResult("next_parts", plan.Next, Checks);
        context.AddResult("van_curve", plan.Curve, Checks);
        context.AddResult("shelf_levels", plan.Shelf, Checks);
        context.AddResult("van_evidence", rows, Checks);
        context.Shared[typeof(ShopPlan)] = plan;
        context.Record["van"] = VanRecord.Of(plan, booked, evidence, rows, TruthCheck.Of(context.Input, evidence, data, views, options));
        VanLists.Write(context.Output.Van, plan, data.AsOf);
        return Task.FromResult((long)plan.Rows.Count);
    }
}
