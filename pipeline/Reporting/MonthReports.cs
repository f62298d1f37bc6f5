using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Publishing;
using PartsSignal.Pipeline.Running;
using PartsSignal.Reports.Monthly;

namespace PartsSignal.Pipeline.Reporting;

/// <summary>Reports of chosen months, as written from the results of the last run.</summary>
/// <param name="Pages">Path of each page.</param>
/// <param name="Months">First day of each month.</param>
/// <param name="AsOf">Last day covered by the data.</param>
internal sealed record MonthReports(IReadOnlyList<string> Pages, IReadOnlyList<DateOnly> Months, DateOnly AsOf)
{
    /// <summary>Writes reports and the list of months. It publishes everything or nothing.</summary>
    /// <param name="output">Folder of the last run.</param>
    /// <param name="shop">What <c>shop.json</c> says.</param>
    /// <param name="choose">Chooses the months from all months with calls and the last day of the data.</param>
    /// <param name="clock">The clock.</param>
    /// <param name="cancellation">Cancels; the reports of before stay.</param>
    /// <exception cref="BadInputException">There are no jobs.</exception>
    /// <exception cref="StoreBusyException">Another program writes to the folder.</exception>
    public static async Task<MonthReports> WriteAsync(OutputFolder output, ShopSettings shop, Func<IReadOnlyList<IndexedMonth>, DateOnly, IReadOnlyList<DateOnly>> choose, TimeProvider clock, CancellationToken cancellation)
    {
        using OutputTransaction draft = await OutputTransaction.BeginAsync(output, clock, cancellation).ConfigureAwait(false);
        using Database database = CurrentStore.Open(output);
        ResultFolder.Attach(database, output.Results);
        DateOnly asOf = ReportMaker.LastDay(database, shop) ?? throw new BadInputException($"{output.Root}: there are no jobs, so there is nothing to report.");
        IReadOnlyList<DateOnly> months = choose(MonthIndex.Read(database), asOf);
        IReadOnlyList<string> pages = ReportMaker.Write(database, shop, output, draft.Folder, months, asOf);
        cancellation.ThrowIfCancellationRequested();
        draft.Commit();
        return new MonthReports(pages, months, asOf);
    }
}
