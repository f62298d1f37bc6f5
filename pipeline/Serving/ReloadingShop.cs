using System.Data.Common;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Learning;
using PartsSignal.Pipeline.Publishing;
using PartsSignal.Pipeline.Reporting;

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

/// <summary>One run as the server uses it, held in memory.</summary>
/// <param name="Output">Folder of the run.</param>
/// <param name="Answers">Answers questions from the run's predictor and store.</param>
/// <param name="DataUpTo">Last day the data covers, or null if there are no jobs.</param>
internal sealed record ServedShop(OutputFolder Output, ShopAnswers Answers, DateOnly? DataUpTo)
{
    /// <summary>Reads the last run.</summary>
    /// <exception cref="BadInputException">There is no run yet, or one of the shop's own tables has faults.</exception>
    public static ServedShop Read(OutputFolder output, string input)
    {
        var answers = ShopAnswers.Read(output, input);
        using Database database = CurrentStore.Open(output);
        return new ServedShop(output, answers, ReportMaker.LastDay(database, answers.Settings));
    }
}
