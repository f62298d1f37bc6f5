using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Running;
using PartsSignal.Pipeline.Understanding;

namespace PartsSignal.Pipeline.FullRun;

/// <summary>What a run came to.</summary>
/// <param name="Load">What became of the files.</param>
/// <param name="Assumed">What was assumed about files that nobody mapped, or null if nothing was.</param>
/// <param name="Lacking">Why there is no rate to give, or null if there are some.</param>
/// <param name="FillInFirst">What to fill in first in the data, or null if nothing single would bring a job back.</param>
internal sealed record ShopRunResult(LoadReport Load, string? Assumed, RunLack? Lacking, string? FillInFirst);

/// <summary>One run over a shop's files, from reading them to the pages. It publishes everything or nothing.</summary>
/// <param name="input">Folder with the shop's files.</param>
/// <param name="output">Folder for everything that is written.</param>
/// <param name="clock">Times the steps.</param>
internal sealed class ShopRun(string input, OutputFolder output, TimeProvider clock)
{
    /// <summary>A <c>shop.json</c> outside the input folder, or null for the one in it.</summary>
    public string? ShopFile { get; init; }

    /// <summary>Receives one line per step.</summary>
    public TextWriter Log { get; init; } = TextWriter.Null;

    /// <summary>Receives progress while reading, or null for no progress.</summary>
    public IProgress<StageProgress>? Progress { get; init; }

    /// <summary>Called when everything is read, or null.</summary>
    public Action? Loaded { get; init; }

    /// <summary>Called once the settings are read and the output folder is locked, or null.</summary>
    public Action? Begun { get; init; }

    /// <summary>Called before each step, or null.</summary>
    public Action<StepStart>? StepBegins { get; init; }

    /// <summary>Runs all steps.</summary>
    /// <exception cref="BadInputException">The settings or the files have faults; the last run's results are unchanged.</exception>
    public async Task<ShopRunResult> RunAsync(CancellationToken cancellation)
    {
        (ShopSettings shop, string? assumed) = ProposedMaps.Complete(input, Config.ShopFile.Load(input, ShopFile), cancellation);
        using OutputTransaction draft = await OutputTransaction.BeginAsync(output, clock, cancellation).ConfigureAwait(false);
        Begun?.Invoke();
        IReadOnlyList<IRunStep> steps = RunSteps.All(Progress, Loaded);
        LoadReport load;
        string? fillInFirst;
        using (var run = new RunContext(input, draft.Folder, shop, clock))
        {
            await new RunPipeline([.. steps.Select((s, i) => new WatchedStep(s, () => StepBegins?.Invoke(new StepStart(s.Name, i, steps.Count))))], Log).RunAsync(run, cancellation).ConfigureAwait(false);
            load = run.State.Load!;
            fillInFirst = run.State.FillInFirst;
        }

        draft.Commit();
        return new ShopRunResult(load, assumed, RunOutcome.Lacks(output.Results), fillInFirst);
    }

    private sealed class WatchedStep(IRunStep step, Action begins) : IRunStep
    {
        public string Name => step.Name;

        public Task<long> RunAsync(RunContext context, CancellationToken cancellation)
        {
            begins();
            return step.RunAsync(context, cancellation);
        }
    }
}

/// <summary>A step that is about to run.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Index">Its place among the steps, from 0.</param>
/// <param name="Count">How many steps there are.</param>
internal readonly record struct StepStart(string Name, int Index, int Count);
