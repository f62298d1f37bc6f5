using PartsSignal.Analysis.Rates;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Publishing;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Prints failure rates with their intervals and their basis.</summary>
internal sealed class RatesCommand(ProgramIo io) : Command<RatesSettings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, RatesSettings settings, CancellationToken cancellationToken)
    {
        RatesQuery query = RatesQuery.Parse(settings);
        var output = new OutputFolder(settings.Out);
        if (!Directory.Exists(output.Store))
        {
            throw new BadInputException($"--out {settings.Out}: holds no store; load the shop's files first.");
        }

        using Database database = Open(output, ShopFile.Load(settings.Input), query);
        var options = new RateOptions();
        IReadOnlyList<FailureRate> rates = query.By == RatesQuery.BySupplier
            ? PartServiceRates.Table(database, options)
            : FailureRateTable.Create(RateCounts.Read(database), options);
        RatesPrinter.Print(io.Out, settings.Format, query.Select(rates));
        return ExitCode.Done;
    }

    private Database Open(OutputFolder output, ShopSettings shop, RatesQuery query)
    {
        Database database = CurrentStore.Open(output);
        ResultRunner.Build(
            database,
            ResultModels.Rates,
            io.Clock,
            ("as_of", shop.AsOf),
            ("rate_from", query.Month),
            ("rate_to", query.Month?.AddMonths(1).AddDays(-1)));
        return database;
    }
}
