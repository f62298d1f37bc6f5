using PartsSignal.Analysis.VanPlan;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Review;
using PartsSignal.Reports.Phone;

namespace PartsSignal.Pipeline.Bench;

/// <summary>What the page of one request shows.</summary>
internal sealed class PageView
{
    private object? _model;

    /// <summary>The open shop, or null if there is none yet.</summary>
    public ShopFolder? Shop { get; set; }

    /// <summary>True while a run goes on.</summary>
    public bool IsRunning { get; set; }

    /// <summary>What to tell about an update that was cut off when the program ended, or null.</summary>
    public string? InterruptedUpdate { get; set; }

    /// <summary>What to tell when the figures end long ago, or null.</summary>
    public string? OldData { get; set; }

    /// <summary>What went wrong with the form just sent; empty: nothing.</summary>
    public IReadOnlyList<string> Faults { get; set; } = [];

    /// <summary>Said once after something was done, or null.</summary>
    public string? Notice { get; set; }

    /// <summary>The page's own data.</summary>
    public T Get<T>() => (T)_model!;

    /// <summary>Sets the page's own data.</summary>
    public void Set(object model) => _model = model;
}

/// <summary>The data of a page of figures, which mislead when they are old.</summary>
internal interface IFigures
{
    /// <summary>Last day that the figures reach, or null if unknown.</summary>
    DateOnly? LastDay { get; }
}

/// <summary>The page of shops.</summary>
internal sealed record ShopsView(IReadOnlyList<ShopFolder> Shops);

/// <summary>The page of files: what each table is taken for.</summary>
/// <param name="Inspection">Tables and questions, or null when no file is there.</param>
/// <param name="FileNames">All files of the shop.</param>
internal sealed record FilesView(Understanding.ShopInspection? Inspection, IReadOnlyList<string> FileNames)
{
    /// <summary>Files and sheets that cannot be read, each with the reason.</summary>
    public IReadOnlyList<string> Unreadable => [.. (Inspection?.Tables ?? []).Where(t => t.Refusal is not null).Select(Refusal)];

    /// <summary>The file that holds a table, or null when it is not to be removed here: each file is offered once, with its first table.</summary>
    public string? FileOf(Understanding.Inspection table) =>
        FileNames.FirstOrDefault(n => IsIn(table, n)) is { } file && ReferenceEquals(Inspection?.Tables.FirstOrDefault(t => IsIn(t, file)), table) ? file : null;

    /// <summary>Files that no table shows.</summary>
    public IReadOnlyList<string> OtherFiles => [.. FileNames.Where(n => !(Inspection?.Tables ?? []).Any(t => IsIn(t, n)))];

    /// <summary>Why a table cannot be read, beginning with its place.</summary>
    public static string Refusal(Understanding.Inspection table) =>
        table.Refusal!.StartsWith(table.File, StringComparison.Ordinal) ? table.Refusal : $"{table.Place}: {table.Refusal}";

    // A table of a zip goes by the zip's name and its own.
    private static bool IsIn(Understanding.Inspection table, string file) => table.File == file || table.File.StartsWith(file + "/", StringComparison.Ordinal);
}

/// <summary>The rows of the last run: what became of them.</summary>
/// <param name="Books">One line per file, or null before the first run.</param>
/// <param name="Total">All files together.</param>
/// <param name="RejectFiles">Files of refused rows, with the number of rows.</param>
/// <param name="NotRead">Files that are not in the books, with the reason.</param>
internal sealed record RowsView(IReadOnlyList<BookLine>? Books, BookLine? Total, IReadOnlyList<(string File, int Rows)> RejectFiles, IReadOnlyList<UnreadFile> NotRead);

/// <summary>What became of the rows of a file: read = loaded + same again + replaced + refused.</summary>
internal sealed record BookLine(string File, string Kind, long Read, long Loaded, long SameAgain, long Replaced, long Refused, long NotData)
{
    /// <summary>Two readings of one file as one line, such as a column of pieces for each van.</summary>
    public BookLine And(BookLine other) => this with
    {
        Read = Read + other.Read,
        Loaded = Loaded + other.Loaded,
        SameAgain = SameAgain + other.SameAgain,
        Replaced = Replaced + other.Replaced,
        Refused = Refused + other.Refused,
        NotData = NotData + other.NotData,
    };
}

/// <summary>Refused rows of one file, to be mended.</summary>
internal sealed record MendView(string File, RefusedRows Rows);

/// <summary>Words and numbers the program asks about.</summary>
internal sealed record WordsView(IReadOnlyList<QuestionList> Lists, QuestionList? Open);

/// <summary>What the last run gave.</summary>
/// <param name="Months">Months with a report, newest first.</param>
/// <param name="HasPhonePage">True when there is a phone page.</param>
/// <param name="HasVanLists">True when there are van lists.</param>
/// <param name="RunAt">When the last update ended, or null if there is none.</param>
/// <param name="ByMonth">All months and their reports.</param>
internal sealed record ResultsView(IReadOnlyList<string> Months, bool HasPhonePage, bool HasVanLists, DateTime? RunAt, MonthsView ByMonth) : IFigures
{
    /// <inheritdoc/>
    public DateOnly? LastDay => ByMonth.LastDay;

    /// <summary>What was changed since the figures were made, in words; empty: nothing.</summary>
    public IReadOnlyList<string> Since { get; init; } = [];
}

/// <summary>The van lists, to be printed.</summary>
/// <param name="Vans">The lists.</param>
/// <param name="LastDay">Last day that the plan knows, or null before the first update.</param>
/// <param name="Month">The newest month with a report, or null if there is none.</param>
/// <param name="Currency">Mark of the shop's currency; may be empty.</param>
/// <param name="StandIn">Which van jobs count for where the files do not tell, or null.</param>
/// <param name="WhyNone">Why the last update made no list, or null before the first update or when there is one.</param>
/// <param name="Words">How part numbers are known where jobs name parts in words, or null where they do not.</param>
internal sealed record VansView(IReadOnlyList<VanList> Vans, DateOnly? LastDay, string? Month, string Currency, VanStandIn? StandIn, string? WhyNone, PartsInWords? Words = null) : IFigures;

/// <summary>Parts for calls that wait for a first visit, a sheet for each van.</summary>
/// <param name="Sheets">The sheets.</param>
/// <param name="LastDay">Last day that is known, or null before the first update.</param>
/// <param name="Waiting">Calls that wait for a first visit.</param>
/// <param name="Assigned">Those whose van or technician is known.</param>
/// <param name="StandIn">Which van jobs count for where the files do not tell, or null.</param>
internal sealed record WaitingView(IReadOnlyList<WaitingSheet> Sheets, DateOnly? LastDay, int Waiting, int Assigned, VanStandIn? StandIn) : IFigures;

/// <summary>The page that asks about a call.</summary>
/// <param name="Call">The question and its answer.</param>
internal sealed record AskView(CallView Call) : IFigures
{
    /// <inheritdoc/>
    public DateOnly? LastDay => Call.DataUpTo;
}

/// <summary>Two months side by side.</summary>
/// <param name="Months">All months, newest first.</param>
/// <param name="First">The one on the left, or null if there are not two.</param>
/// <param name="Second">The one on the right, or null likewise.</param>
internal sealed record CompareView(IReadOnlyList<string> Months, MonthFigures? First, MonthFigures? Second);

/// <summary>A customer who is about to be forgotten.</summary>
/// <param name="Customer">As typed.</param>
/// <param name="Rows">Rows of the shop's files with that name, number or address.</param>
/// <param name="Files">Files they stand in.</param>
internal sealed record ForgetView(string Customer, long Rows, int Files);

/// <summary>Settings as a form.</summary>
/// <param name="Settings">The settings.</param>
/// <param name="Vans">Vans of the settings, those that were only counted, and blank ones to fill in.</param>
/// <param name="StandIn">Which van jobs count for where the files do not tell, or null.</param>
/// <param name="Technicians">Technicians as the job log names them; empty before the first update.</param>
internal sealed record SettingsView(ShopSettings Settings, IReadOnlyList<ShopVan> Vans, VanStandIn? StandIn, IReadOnlyList<string> Technicians);

/// <summary>The last updates, newest first.</summary>
/// <param name="Entries">Each with what was different from the one before it.</param>
/// <param name="Since">What was changed since the figures were made, in words.</param>
internal sealed record HistoryView(IReadOnlyList<(HistoryEntry Entry, IReadOnlyList<string> Changes)> Entries, IReadOnlyList<string> Since)
{
    /// <summary>The updates of a shop.</summary>
    public static HistoryView Of(ShopFolder shop, TimeProvider clock)
    {
        var history = new ShopHistory(shop, clock);
        return new HistoryView([.. history.Entries.Select(e => (e, history.Changes(e)))], FiguresBasis.ChangesSince(shop));
    }
}
