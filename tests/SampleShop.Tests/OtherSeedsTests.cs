using PartsSignal.SampleShop.Scoring;

namespace PartsSignal.SampleShop.Tests;

public sealed class OtherSeedsTests
{
    [SlowFact]
    public void Write_SeveralSeeds_WorldStaysWithinItsBands()
    {
        foreach (long seed in new[] { 1L, 2L, 3L })
        {
            string folder = Directory.CreateTempSubdirectory("sample-shop-").FullName;
            try
            {
                WorldFigures figures = SampleShopMaker.Write(new SampleShopOptions(20000, seed, folder) { WithDemand = false });
                Assert.All(figures.Bands, b => Assert.InRange(b.Value, b.Low, b.High));
            }
            finally
            {
                Directory.Delete(folder, true);
            }
        }
    }
}
