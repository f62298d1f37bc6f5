using System.Text.Json.Nodes;
using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.Answers;
using PartsSignal.Analysis.Prediction.ModelFiles;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.VanPlan.Replay;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Learning;
using PartsSignal.Pipeline.Running;

namespace PartsSignal.Pipeline.Planning;

/// <summary>Plans what each van should carry, tests the plan by replay, and writes the lists.</summary>
internal sealed class PlanStep : IBackgroundStep
{
    private Task<Replay>? _begun;
    private IReadOnlyList<VanGroup> _groups = [];

    /// <inheritdoc/>
    public string Name => "van plan";

    /// <inheritdoc/>
    public long Begin(RunContext context)
    {
        VanPlanOptions shop = Options(context);
        _groups = VanGroup.Create(context.Database, context.Settings.AsOf, shop);
        VanPlanOptions options = _groups[0].Options(shop);
        if (ShopDataReader.Read(context.Database, context.Settings.AsOf, _groups[0]) is not { } data)
        {
            return 0;
        }

        var views = new ShopViews(data, options);
        RollingReplay.Prepare(data, options);
        _begun = BackgroundTask.Start(() =>
        {
            ReplayEvidence evidence = RollingReplay.Run(data, views, options);
            return new Replay(data, views, options, evidence, EvidenceRow.From(evidence.Rows, options));
        });
        return data.Jobs.Count;
    }

    /// <inheritdoc/>
    public async Task<long> RunAsync(RunContext context, CancellationToken cancellation)
    {
        if (_begun is null)
        {
            Begin(context);
        }

        if (_begun is null)
        {
            context.Record["van"] = new JsonObject { ["jobs_replayed"] = 0, ["answer"] = "no jobs: nothing tells what a van needs" };
            return 0;
        }

        Replay replay = await _begun.WaitAsync(cancellation).ConfigureAwait(false);
        ShopData data = replay.Data;
        BookedJobs booked = BookedSource.Read(context.Database, data.AsOf, context.State.Learned?.Model, context.Input, context.Settings);
        ShopPlan plan = ShelfStock.Use(JoinedPlan.Join(Plans(context, replay, booked, cancellation)), data, booked.Waiting, replay.Views.Facts, replay.Options);
        cancellation.ThrowIfCancellationRequested();
        context.AddResult("van_summary", plan.Summaries);
        context.AddResult("van_plan", plan.Rows);
        context.AddResult("van_changes", plan.Changes);
        context.AddResult("van_orders", plan.Orders);
        context.AddResult("van_booked", plan.Booked);
        context.AddResult("van_dead_stock", plan.Dead);
        context.AddResult("next_parts", plan.Next);
        context.AddResult("van_curve", plan.Curve);
        context.AddResult("shelf_levels", plan.Shelf);
        context.AddResult("van_evidence", replay.Rows);
        context.Record["van"] = VanRecord.Create(plan, booked, replay.Evidence, replay.Rows, data.AsOf, Options(context));
        VanLists.Write(context.Output.Van, plan, data.AsOf);
        return plan.Rows.Count;
    }

    private static VanPlanOptions Options(RunContext context) => ShopPlanOptions.From(StoredVans.Name(context.Settings, context.Output, context.Database));

    // One group at a time, to limit memory. The first is also replayed, as evidence for all.
    private IEnumerable<ShopPlan> Plans(RunContext context, Replay replay, BookedJobs booked, CancellationToken cancellation)
    {
        double target = context.Settings.ServiceTarget;
        yield return ShopPlan.Create(replay.Data, replay.Views, replay.Options, target, booked.Create(_groups[0].Vans));
        foreach (VanGroup group in _groups.Skip(1))
        {
            cancellation.ThrowIfCancellationRequested();
            ShopData data = ShopDataReader.Other(replay.Data, context.Database, group);
            VanPlanOptions options = group.Options(Options(context));
            yield return ShopPlan.Create(data, new ShopViews(data, options), options, target, booked.Create(group.Vans));
        }
    }

    private sealed record Replay(
        ShopData Data, ShopViews Views, VanPlanOptions Options, ReplayEvidence Evidence, IReadOnlyList<EvidenceRow> Rows);
}

/// <summary>Reads the jobs already booked and predicts their needs.</summary>
internal static class BookedSource
{
    /// <summary>Reads and predicts them.</summary>
    /// <param name="database">A session over the store.</param>
    /// <param name="day">Last day of the plan's data.</param>
    /// <param name="model">The predictor, or null if there is none.</param>
    /// <param name="input">Folder with the shop's files, which may hold its own check tables.</param>
    /// <param name="settings">The shop's costs.</param>
    public static BookedJobs Read(Database database, DateOnly day, ShippedModel? model, string input, ShopSettings settings) => BookedJobs.Create(
        BookedCalls.Read(database),
        day,
        model,
        () => FactReader.Read(database, CheckTableReader.Load(input), []),
        ShopAnswers.Options(settings));
}
