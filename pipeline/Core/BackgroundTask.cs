namespace PartsSignal.Pipeline.Core;

/// <summary>Runs work on a dedicated background thread.</summary>
internal static class BackgroundTask
{
    /// <summary>Starts the work outside the thread pool, whose threads stay free for its parallel loops.</summary>
    public static Task<T> Start<T>(Func<T> calculation) =>
        Task.Factory.StartNew(calculation, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
}
