using PartsSignal.SampleShop.Scoring;
using PartsSignal.SampleShop.Simulation;
using PartsSignal.SampleShop.Writing;

namespace PartsSignal.SampleShop;

/// <summary>What a sample shop is made from.</summary>
/// <param name="Jobs">About how many jobs its log should hold, 200 or more.</param>
/// <param name="Seed">Same seed, same bytes.</param>
/// <param name="Folder">Folder to write to; made when it is not there.</param>
public sealed record SampleShopOptions(int Jobs, long Seed, string Folder)
{
    /// <summary>Seed of the sample that comes with the program.</summary>
    public const long CommittedSeed = 20261031;

    /// <summary>Jobs of the sample that comes with the program.</summary>
    public const int CommittedJobs = 20000;

    /// <summary>Write truth/demand.csv.gz, which lives the years again many times over and takes most of the time.</summary>
    public bool WithDemand { get; init; } = true;
}

/// <summary>Makes a fictional shop's files, with their truth in <c>truth/</c> beside them.</summary>
public static class SampleShopMaker
{
    /// <summary>Jobs of one area; a larger shop has more areas, made one after another, so memory holds one area.</summary>
    internal const int JobsPerArea = 20000;

    /// <summary>Writes the shop.</summary>
    /// <returns>Its figures, among them how many jobs its log holds.</returns>
    public static WorldFigures Write(SampleShopOptions options)
    {
        Directory.CreateDirectory(options.Folder);
        string truthFolder = Path.Combine(options.Folder, "truth");
        int areas = Math.Max(1, (options.Jobs + (JobsPerArea / 2)) / JobsPerArea);
        double size = (double)options.Jobs / areas / JobsPerArea;
        var numbers = new Numbering();
        using var files = new ShopFiles(options.Folder, options.Seed);
        using var truth = new TruthFiles(truthFolder);
        for (int area = 0; area < areas; area++)
        {
            new Area(options.Seed, options.Seed, area, size, numbers, new ShopLogs(files, truth)).Run();

            // an area is tens of megabytes that nobody needs any more; without this the heap grows by their size a few times over
            GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, true, true);
        }

        files.WriteLists();
        if (options.WithDemand)
        {
            DemandFile.Write(truthFolder, options.Seed, size);
        }

        return truth.WriteTables();
    }
}
