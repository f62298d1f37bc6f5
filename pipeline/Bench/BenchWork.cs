using System.Collections.Concurrent;
using System.Data.Common;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.FullRun;
using PartsSignal.Pipeline.Publishing;
using PartsSignal.Pipeline.Reporting;
using PartsSignal.Pipeline.Staging;

namespace PartsSignal.Pipeline.Bench;

/// <summary>Where the work stands.</summary>
internal enum WorkOutcome
{
    /// <summary>Nothing was started yet.</summary>
    None,

    /// <summary>It runs.</summary>
    Running,

    /// <summary>It is done.</summary>
    Done,

    /// <summary>The owner stopped it; nothing changed.</summary>
    Stopped,

    /// <summary>It failed; nothing changed.</summary>
    Failed,
}

/// <summary>What the progress page shows.</summary>
/// <param name="Outcome">Where it stands.</param>
/// <param name="Folder">Folder of the shop it is about.</param>
/// <param name="Percent">Share done, 0 to 100.</param>
/// <param name="Step">What it does now, in words.</param>
/// <param name="Messages">Faults, or what was assumed; one sentence each.</param>
internal sealed record WorkState(WorkOutcome Outcome, string? Folder, int Percent, string Step, IReadOnlyList<string> Messages)
{
    /// <summary>First day of the month whose report is made, or null when the figures are updated.</summary>
    public DateOnly? ReportMonth { get; init; }

    /// <summary>What was done, a sentence each.</summary>
    public IReadOnlyList<string> Summary { get; init; } = [];

    /// <summary>What to fill in first in the data, or null if nothing single would bring a job back.</summary>
    public string? FillInFirst { get; init; }

    /// <summary>Nothing was started yet.</summary>
    public static readonly WorkState Idle = new(WorkOutcome.None, null, 0, "", []);
}

/// <summary>Why the figures are updated, where it is not the owner's usual update.</summary>
internal sealed record UpdateReason
{
    /// <summary>True if the files of an earlier update took the place of the present ones.</summary>
    public bool GoesBack { get; init; }

    /// <summary>The customer who is to be forgotten, or null.</summary>
    public FoundCustomer? Forgets { get; init; }
}

/// <summary>Updates a shop's figures or makes a report in the background, one at a time. Closing the page does not stop it.</summary>
/// <param name="clock">Times the steps.</param>
internal sealed class BenchWork(TimeProvider clock) : IDisposable
{
    /// <summary>Said when another program writes to the shop.</summary>
    public const string Busy = "This shop is being updated somewhere else, maybe from the command line. Try again when that is done.";

    private const int ReadingPercent = 40;

    private static readonly Dictionary<string, string> Titles = new(StringComparer.Ordinal)
    {
        ["load"] = "Reading your files",
        ["begin"] = "Getting ready",
        ["months"] = "Counting calls by month",
        ["rates"] = "Working out how often parts fail",
        ["callbacks"] = "Looking at jobs that came back",
        ["suppliers"] = "Comparing suppliers",
        ["age curves"] = "Looking at failures by age",
        ["trends"] = "Looking for parts that fail more often",
        ["learn"] = "Learning what calls need",
        ["van plan"] = "Planning the vans",
        ["results"] = "Saving the results",
        ["report"] = "Writing the report",
        ["phone page"] = "Writing the phone page",
    };

    private readonly Lock _lock = new();
    private CancellationTokenSource? _stop;
    private volatile bool _closes;
    private Task _running = Task.CompletedTask;

    /// <summary>Where it stands now.</summary>
    public WorkState Now { get; private set; } = WorkState.Idle;

    /// <summary>Starts a run.</summary>
    /// <param name="shop">The shop.</param>
    /// <param name="reason">Why, or null for the owner's usual update.</param>
    /// <returns>False when something runs already.</returns>
    public bool Start(ShopFolder shop, UpdateReason? reason = null) =>
        Begin(new WorkState(WorkOutcome.Running, shop.Folder, 0, Titles["load"], []), () => new UpdateMark(shop).Begin(reason?.GoesBack == true), stop => UpdateAsync(shop, reason ?? new UpdateReason(), stop));

    /// <summary>Starts making the report of one month from the figures of the last run.</summary>
    /// <param name="shop">The shop.</param>
    /// <param name="month">First day of the month.</param>
    /// <returns>False when something runs already.</returns>
    public bool StartReport(ShopFolder shop, DateOnly month) =>
        Begin(new WorkState(WorkOutcome.Running, shop.Folder, 0, Titles["report"], []) { ReportMonth = month }, () => { }, stop => ReportAsync(shop, month, stop));

    private bool Begin(WorkState begins, Action before, Func<CancellationToken, Task> work)
    {
        lock (_lock)
        {
            if (Now.Outcome == WorkOutcome.Running)
            {
                return false;
            }

            _stop?.Dispose();
            _stop = new CancellationTokenSource();
            CancellationToken stop = _stop.Token;
            before();
            Now = begins;
            _running = Task.Run(() => RunAsync(work, stop));
            return true;
        }
    }

    /// <summary>Stops the run; the last complete one stays.</summary>
    /// <param name="closes">True when the program ends: the next start tells that the run was cut off.</param>
    public void Stop(bool closes = false)
    {
        _closes = closes;
        lock (_lock)
        {
            _stop?.Cancel();
        }
    }

    /// <summary>Waits until nothing runs.</summary>
    public Task WhenIdleAsync() => _running;

    /// <inheritdoc/>
    public void Dispose() => _stop?.Dispose();

    private async Task ReportAsync(ShopFolder shop, DateOnly month, CancellationToken cancellation)
    {
        WaitForOthers(shop);
        await MonthReports.WriteAsync(shop.Output, ShopFile.Load(shop.Files), (_, _) => [month], clock, cancellation).ConfigureAwait(false);
        End(WorkOutcome.Done, 100, $"The report of {PageText.Month(month)} is ready.", []);
    }

    private async Task UpdateAsync(ShopFolder shop, UpdateReason reason, CancellationToken cancellation)
    {
        var mark = new UpdateMark(shop);
        var back = new UpdateRollback(shop);
        bool published = false;
        try
        {
            WaitForOthers(shop);
            var inputs = ShopInputs.Now(shop.Files, FiguresBasis.Read(shop));
            ShopRunResult result = await new ShopRun(shop.Files, shop.Output, clock)
            {
                Progress = new Reading(this),
                StepBegins = step => Show(step.Index == 0 ? 0 : ReadingPercent + ((100 - ReadingPercent) * step.Index / step.Count), Titles.GetValueOrDefault(step.Name, step.Name)),
            }.RunAsync(cancellation).ConfigureAwait(false);
            published = true;
            back.End();
            FiguresBasis.Save(shop, inputs);
            await CloseAsync(shop, reason, result, cancellation).ConfigureAwait(false);
        }
        finally
        {
            if (!published)
            {
                await back.UndoAsync(clock).ConfigureAwait(false);
            }

            if (published || !_closes)
            {
                mark.End();
            }
        }
    }

    // The figures are published: what is left is keeping the update and saying what it did.
    private async Task CloseAsync(ShopFolder shop, UpdateReason reason, ShopRunResult result, CancellationToken cancellation)
    {
        var history = new ShopHistory(shop, clock);
        if (history.IsForgetting)
        {
            await CustomerRemoval.DropPreviousAsync(shop.Output, clock, cancellation).ConfigureAwait(false);
            history.EndForgetting();
        }

        bool kept = history.Keep(result.Load.Total.Rows.Read);
        new ForgottenCopies(shop, history).Drop(cancellation);
        string? full = kept ? null : "The disk is nearly full, so this update cannot be gone back to.";
        IReadOnlyList<string> messages = [.. result.Load.FileErrors, .. new[] { result.Lacking is { } lack ? $"{lack.Said} {lack.OnPages}" : null, full }.OfType<string>()];
        IReadOnlyList<string> summary = UpdateSummary.Of(shop, reason, result, cancellation);
        lock (_lock)
        {
            Now = Now with { Outcome = WorkOutcome.Done, Percent = 100, Step = "Done", Messages = messages, Summary = summary, FillInFirst = result.FillInFirst };
        }
    }

    private void WaitForOthers(ShopFolder shop)
    {
        if (StoreLock.IsHeldAt(shop.Output.Root))
        {
            Show(0, "Waiting: another program is updating this shop");
        }
    }

    private async Task RunAsync(Func<CancellationToken, Task> work, CancellationToken cancellation)
    {
        try
        {
            await work(cancellation).ConfigureAwait(false);
        }
        catch (OperationCanceledException)
        {
            End(WorkOutcome.Stopped, 0, "Stopped. Nothing was changed.", []);
        }
        catch (BadInputException bad)
        {
            End(WorkOutcome.Failed, 0, "It could not be finished. Nothing was changed.", bad.Faults);
        }
        catch (StoreBusyException)
        {
            End(WorkOutcome.Failed, 0, "The update could not start. Nothing was changed.", [Busy]);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or InvalidDataException or DbException)
        {
            End(WorkOutcome.Failed, 0, "It could not be finished. Nothing was changed.", [failure.Message]);
        }
    }

    private void Show(int percent, string step)
    {
        lock (_lock)
        {
            Now = Now with { Percent = Math.Max(Now.Percent, percent), Step = step };
        }
    }

    private void End(WorkOutcome outcome, int percent, string step, IReadOnlyList<string> messages)
    {
        lock (_lock)
        {
            Now = Now with { Outcome = outcome, Percent = percent, Step = step, Messages = messages };
        }
    }

    private sealed class Reading(BenchWork work) : IProgress<StageProgress>
    {
        private readonly ConcurrentDictionary<string, StageProgress> _files = new(StringComparer.Ordinal);

        public void Report(StageProgress value)
        {
            _files[value.File] = value;
            long read = _files.Values.Sum(f => f.Bytes), all = _files.Values.Sum(f => f.AllBytes), rows = _files.Values.Sum(f => f.Rows);
            work.Show(all <= 0 ? 0 : (int)(ReadingPercent * Math.Min(read, all) / all), $"{Titles["load"]}: {rows.ToString("N0", System.Globalization.CultureInfo.InvariantCulture)} rows");
        }
    }
}
