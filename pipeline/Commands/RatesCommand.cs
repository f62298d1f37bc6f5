using System.ComponentModel;
using PartsSignal.Analysis.Rates;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Publishing;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Options of <c>rates</c>.</summary>
internal sealed class RatesSettings : CommandSettings
{
    [CommandOption("--component <NAME>")]
    [Description("Only this component, such as inlet_valve, or none for calls without a part")]
    public string? Component { get; init; }

    [CommandOption("--family <NAME>")]
    [Description("Only this model family")]
    public string? Family { get; init; }

    [CommandOption("--age <BAND>")]
    [Description("Only appliances of this age in years: 0-2, 2-4, 4-6, 6-8, 8-10, 10-13, 13+ or unknown")]
    public string? Age { get; init; }

    [CommandOption("--complaint <KIND>")]
    [Description("Only calls with this complaint, such as no_fill")]
    public string? Complaint { get; init; }

    [CommandOption("--by <SPLIT>")]
    [Description("Split by type, family, brand, age, complaint, " + RateCut.Names + " or supplier")]
    public string? By { get; init; }

    [CommandOption("--month <YYYY-MM>")]
    [Description("Only calls of this month; default: all")]
    public string? Month { get; init; }

    [CommandOption("--input <FOLDER>")]
    [Description("Folder with the shop's shop.json; default: that of the last run")]
    public string? Input { get; init; }

    [CommandOption("--out <FOLDER>")]
    [Description("Folder that holds the store")]
    [DefaultValue("out")]
    public string Out { get; init; } = "out";

    [CommandOption("--format <FORMAT>")]
    [Description("table, csv or json")]
    [DefaultValue(OutputFormat.Table)]
    public OutputFormat Format { get; init; } = OutputFormat.Table;
}

/// <summary>Prints failure rates with their intervals and what they are based on.</summary>
internal sealed class RatesCommand(ProgramIo io) : Command<RatesSettings>
{
    public override int Execute(CommandContext context, RatesSettings settings, CancellationToken cancellationToken)
    {
        RatesQuery query = RatesQuery.Parse(settings);
        var output = new OutputFolder(settings.Out);
        if (!Directory.Exists(output.Store))
        {
            throw new BadInputException($"--out {settings.Out}: there is no store here yet. Run 'partssignal run' first.");
        }

        ShopSettings shop = ShopFile.Load(ShopInUse.Input(settings.Input, output));
        using Database database = Open(output, shop, query);
        var options = new RateOptions();
        IReadOnlyList<FailureRate> rates = query.By == RatesQuery.BySupplier
            ? PartServiceRates.Table(database, options)
            : FailureRateTable.Create(RateCounts.Read(database), options);
        ShopInUse.PrintName(io.Out, settings.Format, shop);
        IReadOnlyList<FailureRate> selected = query.Select(rates);
        RatesPrinter.Print(io.Out, settings.Format, selected, basis => Untold(basis, rates, selected));
        return ExitCode.Done;
    }

    /// <summary>Failures of the components shown whose jobs do not say which machine it was, and how many of them the rates count.</summary>
    private static (long MayBe, double Counted) Untold(string basis, IReadOnlyList<FailureRate> rates, IReadOnlyList<FailureRate> selected)
    {
        var shown = selected.Where(r => r.Basis == basis && r.SubjectKind == RateSubject.Component).Select(r => (r.ApplianceType, r.Subject)).ToHashSet();
        FailureRate[] types = [.. rates.Where(r => r.Basis == basis && r.Grouping == "type" && shown.Contains((r.ApplianceType, r.Subject)) && r.SubjectKind == RateSubject.Component)];
        return (types.Sum(r => r.Untold ?? 0), types.Sum(r => r.UntoldExpected ?? 0));
    }

    private Database Open(OutputFolder output, ShopSettings shop, RatesQuery query)
    {
        Database database = CurrentStore.Open(output);
        ResultRunner.Build(
            database,
            ResultModels.Rates,
            io.Clock,
            ("as_of", shop.AsOf),
            ("callback_days", shop.CallbackDays),
            ("rate_from", query.Month),
            ("rate_to", query.Month?.AddMonths(1).AddDays(-1)));
        return database;
    }
}
