using PartsSignal.SampleShop.Scoring;

namespace PartsSignal.SampleShop.Tests;

/// <summary>The sample that comes with the program, made again once for all tests of the class.</summary>
public sealed class CommittedSample : IDisposable
{
    public CommittedSample()
    {
        Folder = Directory.CreateTempSubdirectory("sample-shop-").FullName;
        Figures = SampleShopMaker.Write(new SampleShopOptions(SampleShopOptions.CommittedJobs, SampleShopOptions.CommittedSeed, Folder));
    }

    public string Folder { get; }

    public WorldFigures Figures { get; }

    public void Dispose() => Directory.Delete(Folder, true);
}
