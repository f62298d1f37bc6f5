using System.Data.Common;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Learning;
using PartsSignal.Pipeline.Publishing;

namespace PartsSignal.Pipeline.Serving;

/// <summary>The shop of the newest run: when a run is published, the next question is answered from it, without a restart.</summary>
internal sealed class ReloadingShop
{
    private readonly OutputFolder _output;
    private readonly Func<ServedShop> _read;
    private readonly Lock _reading = new();
    private ServedShop _shop;
    private string _stamp;

    /// <summary>Holds the shop as it is now.</summary>
    /// <param name="output">Folder of the runs.</param>
    /// <param name="read">Reads the newest run.</param>
    public ReloadingShop(OutputFolder output, Func<ServedShop> read)
    {
        (_output, _read) = (output, read);
        _stamp = Stamp();
        _shop = read();
    }

    /// <summary>The newest run that could be read; while a new one is half in place, the one before it.</summary>
    public ServedShop Now()
    {
        lock (_reading)
        {
            string stamp = Stamp();
            if (stamp != _stamp)
            {
                try
                {
                    _shop = _read();
                    _stamp = stamp;
                }
                catch (Exception halfWay) when (halfWay is BadInputException or IOException or InvalidDataException or DbException)
                {
                    // The stamp stays the old one, so that the next question tries again.
                    return _shop;
                }
            }

            return _shop;
        }
    }

    /// <summary>Changes whenever a store, a model or results take their place.</summary>
    private string Stamp() => string.Join(
        '|',
        StoreSwap.Resolve(_output.Store),
        Written(ModelStore.PathOf(_output)),
        Written(_output.Results));

    private static string Written(string path) => (File.Exists(path) ? File.GetLastWriteTimeUtc(path) : Directory.GetLastWriteTimeUtc(path)).Ticks
        .ToString(System.Globalization.CultureInfo.InvariantCulture);
}
