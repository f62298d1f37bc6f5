using System.ComponentModel;
using System.Globalization;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reporting;
using PartsSignal.Reports.Monthly;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Options of <c>report</c>.</summary>
internal sealed class ReportSettings : CommandSettings
{
    [CommandOption("--month <YYYY-MM>")]
    [Description("Month to report, or all; default: the last full month with calls")]
    public string? Month { get; init; }

    [CommandOption("--input <FOLDER>")]
    [Description("Folder with the shop's shop.json; default: that of the last run")]
    public string? Input { get; init; }

    [CommandOption("--out <FOLDER>")]
    [Description("Folder of the last run")]
    [DefaultValue("out")]
    public string Out { get; init; } = "out";
}

/// <summary>Writes the report of a month from the results of the last run.</summary>
internal sealed class ReportCommand(ProgramIo io) : AsyncCommand<ReportSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, ReportSettings settings, CancellationToken cancellationToken)
    {
        var output = new OutputFolder(settings.Out);
        if (!Directory.Exists(output.Results))
        {
            throw new BadInputException($"--out {settings.Out}: there are no results here yet. Run 'partssignal run --out {settings.Out}' first.");
        }

        ShopSettings shop = ShopFile.Load(ShopInUse.Input(settings.Input, output));
        (IReadOnlyList<string> pages, IReadOnlyList<DateOnly> months, DateOnly asOf) = await MonthReports.WriteAsync(output, shop, (all, last) => Months(settings.Month, all, last), io.Clock, cancellationToken).ConfigureAwait(false);
        DateOnly last = ReportMonths.Last(asOf);
        if (settings.Month is null && months[0] != last)
        {
            io.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"There were no calls in {last:yyyy-MM}. This is the report for {months[0]:yyyy-MM}, the last month with calls."));
        }

        foreach (string page in pages)
        {
            io.Out.WriteLine(page);
        }

        return ExitCode.Done;
    }

    private static IReadOnlyList<DateOnly> Months(string? asked, IReadOnlyList<IndexedMonth> all, DateOnly asOf) => asked switch
    {
        null => [ReportMonths.NewestWithCalls(all, asOf)],
        "all" => [.. all.Select(m => m.Month)],
        _ when DateOnly.TryParseExact(asked + "-01", "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly month) => [Reached(month, all, asOf)],
        _ => throw new BadInputException($"--month {asked}: is not a month. Write it as 2026-09, or all."),
    };

    private static DateOnly Reached(DateOnly month, IReadOnlyList<IndexedMonth> all, DateOnly asOf)
    {
        DateOnly first = all.Select(m => m.Month).DefaultIfEmpty(month).Min();
        return month >= first && month <= asOf
            ? month
            : throw new BadInputException(string.Create(CultureInfo.InvariantCulture, $"--month {month:yyyy-MM}: your files go from {first:yyyy-MM} to {asOf:yyyy-MM}. Choose a month of these, or all."));
    }
}
