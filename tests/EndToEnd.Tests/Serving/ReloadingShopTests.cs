using PartsSignal.Analysis.CheckOrder;
using PartsSignal.Analysis.Prediction.Answers;
using PartsSignal.EndToEnd.Tests.PhonePage;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Learning;
using PartsSignal.Pipeline.Serving;

namespace PartsSignal.EndToEnd.Tests.Serving;

public sealed class ReloadingShopTests : IDisposable
{
    private readonly OutputFolder _output = new(Directory.CreateTempSubdirectory("partssignal-live").FullName);
    private int _reads;
    private bool _broken;

    [Fact]
    public void Now_NewModelPublished_IsAnsweredFromWithoutARestart()
    {
        Publish(1);
        var live = new ReloadingShop(_output, Read);
        ServedShop first = live.Now();
        Assert.Same(first, live.Now());
        Publish(2);
        Assert.NotSame(first, live.Now());
        Assert.Equal(2, _reads);
    }

    [Fact]
    public void Now_NewRunHalfInPlace_StaysWithTheLastAndTriesAgain()
    {
        Publish(1);
        var live = new ReloadingShop(_output, Read);
        ServedShop first = live.Now();
        Publish(2);
        _broken = true;
        Assert.Same(first, live.Now());
        _broken = false;
        Assert.NotSame(first, live.Now());
    }

    public void Dispose() => Directory.Delete(_output.Root, recursive: true);

    private void Publish(int run)
    {
        ModelStore.Write(_output, InventedPhone.Model);
        File.SetLastWriteTimeUtc(ModelStore.PathOf(_output), new DateTime(2026, 1, run, 0, 0, 0, DateTimeKind.Utc));
    }

    private ServedShop Read()
    {
        if (_broken)
        {
            throw new IOException("half way");
        }

        _reads++;
        var facts = new LookupFacts([], [], [], [], [], CheckTable.Empty, []);
        return new ServedShop(_output, RunningServer.Answers(new ShopSettings(), ModelStore.Read(_output), facts), null);
    }
}
