using System.ComponentModel;
using System.Globalization;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Rejects;
using PartsSignal.Pipeline.Review;
using PartsSignal.Pipeline.Running;
using PartsSignal.Pipeline.Staging;
using PartsSignal.Pipeline.Transform;
using PartsSignal.Pipeline.Understanding;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Options of <c>load</c>.</summary>
internal sealed class LoadSettings : CommandSettings
{
    [CommandOption("--input <FOLDER>")]
    [Description("Folder with the shop's files and its shop.json")]
    [DefaultValue("data-sample")]
    public string Input { get; init; } = "data-sample";

    [CommandOption("--out <FOLDER>")]
    [Description("Folder for the store, the rejects and the review lists")]
    [DefaultValue("out")]
    public string Out { get; init; } = "out";

    [CommandOption("--format <FORMAT>")]
    [Description("table, csv or json")]
    [DefaultValue(OutputFormat.Table)]
    public OutputFormat Format { get; init; }

    [CommandOption("--steps")]
    [Description("Also print each step with its rows and seconds, to stderr")]
    public bool Steps { get; init; }

    [CommandOption("--keep-intermediate")]
    [Description("Also keep the tables between the files and the store in intermediate.duckdb, to look at with any DuckDB client")]
    public bool KeepIntermediate { get; init; }
}

/// <summary>Reads the shop's files and makes them the current store: stage, transform, publish.</summary>
internal sealed class LoadCommand(ProgramIo io) : AsyncCommand<LoadSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, LoadSettings settings, CancellationToken cancellationToken)
    {
        if (!Directory.Exists(settings.Input))
        {
            throw new BadInputException($"--input {settings.Input}: there is no such folder. Check the path.");
        }

        var progress = ProgressLine.For(io);
        (ShopSettings shop, string? assumed) = ProposedMaps.Complete(settings.Input, ShopFile.Load(settings.Input), cancellationToken);
        using OutputTransaction draft = await OutputTransaction.BeginAsync(new OutputFolder(settings.Out), io.Clock, cancellationToken).ConfigureAwait(false);
        LoadReport report = await ShopLoad.RunAsync(settings.Input, draft.Folder, shop, io.Clock, progress, cancellationToken, settings.KeepIntermediate).ConfigureAwait(false);
        draft.Commit();
        progress?.Clear();
        if (settings.Format == OutputFormat.Table)
        {
            io.Out.WriteLine(RejectFile.Notice(settings.Out, report.Total.Rows.Rejected, report.Total.NotData));
        }

        TablePrinter.Print(io.Out, settings.Format, [.. report.Files, report.Total], Columns);
        if (settings.Format == OutputFormat.Table)
        {
            Remarks(report, settings);
        }

        foreach (ResultLog step in settings.Steps ? report.Steps : [])
        {
            io.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{step.Table,-20} {step.Rows,12:N0} rows {step.Seconds,8:0.000} s"));
        }

        foreach (ResourceUsage phase in settings.Steps ? report.Phases : [])
        {
            io.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{phase.Name,-20} {phase.Seconds,8:0.000} s {phase.AllocatedMegabytes,8:N0} MB allocated {phase.PeakMegabytes,8:N0} MB peak so far"));
        }

        return FileErrors.Tell(report, io, assumed, settings.Format == OutputFormat.Table ? io.Out : io.Error);
    }

    private static readonly TableColumn<(FileCounts Rows, long NotData)>[] Columns =
    [
        new("file", "file", b => b.Rows.File),
        new("kind", "kind", b => b.Rows.Kind),
        new("read", "read", b => b.Rows.Read),
        new("loaded", "loaded", b => b.Rows.Loaded),
        new("duplicate", "same again", b => b.Rows.Duplicate),
        new("replaced", "replaced", b => b.Rows.Replaced),
        new("rejected", "refused", b => b.Rows.Rejected),
        new("not_data", "not data", b => b.NotData),
    ];

    private void Remarks(LoadReport report, LoadSettings settings)
    {
        io.Out.WriteLine();
        foreach (StagedFile file in report.Staged)
        {
            foreach (string remark in file.Remarks)
            {
                io.Out.WriteLine($"{file.SourceFile}: {remark}");
            }

            string[] skipped = [.. new[] { (file.Titles, "title line"), (file.RepeatedHeaders, "repeated header"), (file.Footers, "footer line") }.Where(s => s.Item1 > 0).Select(s => Counted.Of(s.Item1, s.Item2))];
            if (skipped.Length > 0)
            {
                io.Out.WriteLine($"{file.SourceFile}: skipped {string.Join(", ", skipped)} (not data; kept as typed in rejects)");
            }

            UnknownCells.Tell(file, io);
        }

        foreach (ReviewCount list in report.Review.Where(r => r.Open > 0))
        {
            io.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{list.Open,8:N0} to answer in {Path.Combine(settings.Out, "review", list.File)}"));
        }

        foreach (ReviewCount list in report.Review.Where(r => r.NotUnderstood > 0))
        {
            io.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Counted.Of(list.NotUnderstood, "answer", 8)} not understood; see the notes in {Path.Combine(settings.Out, "review", list.File)}"));
        }

        io.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Counted.Of(report.DataFaults, "contradiction", 8)} in the data, listed in {Path.Combine(settings.Out, "review", ReviewNames.DataFaults)}"));
        io.Out.WriteLine(report.FileErrors.Count == 0 ? "Done. Every row is accounted for and your data is up to date." : $"Done. Every row is accounted for and your data is up to date without {Counted.Of(report.FileErrors.Count, "file")} that could not be read.");
    }
}

/// <summary>Tells the user which cells count as unknown because they could not be read.</summary>
internal static class UnknownCells
{
    /// <summary>Writes a line for each field and reason of a file.</summary>
    public static void Tell(StagedFile file, ProgramIo io)
    {
        foreach (UnreadCells unread in file.UnreadCells)
        {
            string verb = unread.Cells == 1 ? "counts" : "count";
            io.Out.WriteLine($"{file.SourceFile}: {Counted.Of(unread.Cells, "value")} of {unread.Field} could not be read and {verb} as unknown ({unread.Code}), first on line {unread.FirstLine}");
        }
    }
}

/// <summary>Tells the user which files could not be read.</summary>
internal static class FileErrors
{
    /// <summary>Writes each to stderr, and files of which every row was rejected; then says what was assumed, as the last line.</summary>
    /// <param name="report">What became of the files.</param>
    /// <param name="io">Where to write.</param>
    /// <param name="assumed">What was assumed, or null if nothing was.</param>
    /// <param name="last">Where that goes.</param>
    /// <returns>The exit code of the command.</returns>
    public static int Tell(LoadReport report, ProgramIo io, string? assumed, TextWriter last)
    {
        string[] empty = [.. report.Rows.Files.Where(f => f.Read > 0 && f.Rejected == f.Read && !report.FileErrors.Any(e => e.StartsWith(f.File, StringComparison.Ordinal))).Select(f => f.File)];
        foreach (string error in report.FileErrors.Concat(empty.Select(f => $"{f}: every row was rejected. See the reasons in the rejects folder, then run inspect {f}.")))
        {
            io.Error.WriteLine(error);
        }

        string said = string.Join(' ', report.Assumptions.Prepend(assumed).OfType<string>());
        if (report.KeyNotice is not null)
        {
            last.WriteLine(report.KeyNotice);
        }

        if (said.Length > 0)
        {
            last.WriteLine(said);
        }

        return report.FileErrors.Count + empty.Length == 0 ? ExitCode.Done : ExitCode.BadInput;
    }
}
