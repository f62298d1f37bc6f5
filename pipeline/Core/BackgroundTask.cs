namespace PartsSignal.Pipeline.Core;

/// <summary>Starts a calculation beside the steps that follow.</summary>
internal static class BackgroundTask
{
    /// <summary>Starts it on a thread of its own, so that the pool's threads stay free for the loops within.</summary>
    public static Task<T> Start<T>(Func<T> calculation) =>
        Task.Factory.StartNew(calculation, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
}
