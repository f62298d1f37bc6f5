using PartsSignal.Pipeline.Commands;

return await CommandHost.RunAsync(args, Console.Out, Console.Error, TimeProvider.System).ConfigureAwait(false);
