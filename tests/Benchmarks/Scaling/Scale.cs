using System.Diagnostics;
using System.Globalization;
using PartsSignal.Benchmarks.Loading;

namespace PartsSignal.Benchmarks.Scaling;

/// <summary>Every step of the program at several sizes of the shop, in one table.</summary>
internal static class Scale
{
    /// <summary>Measures and prints; what it made is deleted unless it is to be kept.</summary>
    public static int Run(ScaleOptions options)
    {
        string root = options.Keep is { } keep ? Directory.CreateDirectory(keep).FullName : Directory.CreateTempSubdirectory("partssignal-scale-").FullName;
        var table = new ScaleTable(options.Sizes);
        try
        {
            foreach (long size in options.Sizes)
            {
                Measure(options, root, size, table);
            }
        }
        finally
        {
            Console.WriteLine(table.Text());
            if (options.Keep is null)
            {
                Directory.Delete(root, recursive: true);
            }
        }

        return table.Failed ? 1 : 0;
    }

    private static void Measure(ScaleOptions options, string root, long size, ScaleTable table)
    {
        string name = size.ToString(CultureInfo.InvariantCulture);
        string shop = Path.Combine(root, "shop-" + name), output = Path.Combine(root, "out-" + name);
        MakeShop(options, shop, size);
        if (options.Wants(ScaleSteps.Ingest))
        {
            Remove(output);
        }

        try
        {
            foreach ((string step, StepCost cost) in ScaleSteps.Measure(shop, output, options.Wants))
            {
                Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{size:N0} {step}: {cost.Seconds:0.0} s, {cost.AllocatedMegabytes:N0} MB allocated, {cost.PeakMegabytes:N0} MB at its peak"));
                table.Add(size, step, cost);
            }
        }
        catch (InvalidOperationException failed)
        {
            Console.Error.WriteLine(failed.Message);
            table.Failed = true;
        }

        if (options.Keep is null)
        {
            Remove(shop);
            Remove(output);
        }
    }

    // The name is given last: a shop that is there is whole.
    private static void MakeShop(ScaleOptions options, string shop, long size)
    {
        if (Directory.Exists(shop))
        {
            return;
        }

        long started = Stopwatch.GetTimestamp();
        string making = shop + ".making";
        Remove(making);
        BigShop.Write(Directory.CreateDirectory(making).FullName, size, options.Years, options.Packed);
        Directory.Move(making, shop);
        Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{size:N0} jobs written in {Stopwatch.GetElapsedTime(started).TotalSeconds:0.0} s"));
    }

    private static void Remove(string folder)
    {
        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
