using System.Diagnostics;
using System.Globalization;
using BenchmarkDotNet.Running;
using PartsSignal.Benchmarks;
using PartsSignal.Benchmarks.Fitting;
using PartsSignal.Benchmarks.Loading;
using PartsSignal.Benchmarks.Scaling;

// dotnet run -c Release --project tests/Benchmarks                     every workload at its default size
// dotnet run -c Release --project tests/Benchmarks -- NAME [SIZE ...]  one workload, at the sizes given
// dotnet run -c Release --project tests/Benchmarks -- kernels [...]    BenchmarkDotNet over the small kernels
// dotnet run -c Release --project tests/Benchmarks -- shop FOLDER ROWS [--years N] [--gzip]  the shop that the loads read, to look into
// dotnet run -c Release --project tests/Benchmarks -- scale [SIZE ...] [--only STEP,STEP] [--keep FOLDER] [--years N] [--gzip]
//                                                                     every step at several numbers of jobs, in one table
if (args is ["kernels", ..])
{
    BenchmarkSwitcher.FromAssembly(typeof(IWorkload).Assembly).Run(args[1..]);
    return 0;
}

if (args is ["shop", var folder, .. var rest])
{
    ScaleOptions shop = ScaleOptions.Parse(rest);
    BigShop.Write(Directory.CreateDirectory(folder).FullName, shop.Sizes[0], shop.Years, shop.Packed);
    return 0;
}

if (args is ["scale", .. var scaled])
{
    return Scale.Run(ScaleOptions.Parse(scaled));
}

if (args is ["fit", .. var fitted])
{
    return FittingProgram.Run(fitted);
}

if (args is ["step", var step, var input, var output])
{
    await StepProgram.RunAsync(step, input, output);
    return 0;
}

IWorkload[] all = [.. typeof(IWorkload).Assembly.GetTypes()
    .Where(t => t is { IsClass: true, IsAbstract: false } && typeof(IWorkload).IsAssignableFrom(t))
    .Select(t => (IWorkload)Activator.CreateInstance(t)!)
    .OrderBy(w => w.Name, StringComparer.Ordinal)];
IWorkload[] chosen = args.Length == 0 ? all : [.. all.Where(w => w.Name == args[0])];
if (chosen.Length == 0)
{
    Console.Error.WriteLine($"No workload '{args[0]}'. There are: {string.Join(", ", all.Select(w => w.Name))}, kernels, scale.");
    return 2;
}

Console.WriteLine($"{Environment.ProcessorCount} processors, {RuntimeInfo()}");
Console.WriteLine("| workload | size | seconds | allocated MB | peak MB of the process | result |");
Console.WriteLine("| --- | ---: | ---: | ---: | ---: | --- |");
foreach (IWorkload workload in chosen)
{
    int[] sizes = args.Length > 1 ? [.. args[1..].Select(s => int.Parse(s, CultureInfo.InvariantCulture))] : [workload.DefaultSize];
    foreach (int size in sizes)
    {
        workload.Prepare(size);
        GC.Collect();
        long before = GC.GetTotalAllocatedBytes(precise: true);
        long started = Stopwatch.GetTimestamp();
        string result = workload.Run();
        double seconds = Stopwatch.GetElapsedTime(started).TotalSeconds;
        long allocated = (GC.GetTotalAllocatedBytes(precise: true) - before) / (1024 * 1024);
        using var self = Process.GetCurrentProcess();
        long peak = self.PeakWorkingSet64 / (1024 * 1024);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {workload.Name} | {size:N0} {workload.Unit} | {seconds:0.000} | {allocated:N0} | {peak:N0} | {result} |"));
    }
}

return 0;

static string RuntimeInfo() => System.Runtime.InteropServices.RuntimeInformation.FrameworkDescription;
