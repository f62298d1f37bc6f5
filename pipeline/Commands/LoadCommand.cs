using System.Globalization;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Rejects;
using PartsSignal.Pipeline.Review;
using PartsSignal.Pipeline.Running;
using PartsSignal.Pipeline.Staging;
using PartsSignal.Pipeline.Transform;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Stage, combine, publish: reads the shop's files and makes them the current store.</summary>
internal sealed class LoadCommand(ProgramIo io) : AsyncCommand<LoadSettings>
{
    /// <inheritdoc/>
    public override async Task<int> ExecuteAsync(CommandContext context, LoadSettings settings, CancellationToken cancellationToken)
    {
        if (!Directory.Exists(settings.Input))
        {
            throw new BadInputException($"--input {settings.Input}: there is no such folder.");
        }

        var progress = ProgressLine.For(io);
        ShopSettings shop = ShopFile.Load(settings.Input);
        using OutputTransaction draft = await OutputTransaction.BeginAsync(new OutputFolder(settings.Out), io.Clock, cancellationToken).ConfigureAwait(false);
        LoadReport report = await ShopLoad.RunAsync(settings.Input, draft.Folder, shop, io.Clock, progress, cancellationToken, settings.KeepIntermediate).ConfigureAwait(false);
        draft.Commit();
        progress?.Clear();
        if (settings.Format == OutputFormat.Table)
        {
            io.Out.WriteLine(RejectFile.Notice(settings.Out, report.Rows.Total.Rejected));
        }

        TablePrinter.Print(io.Out, settings.Format, [.. report.Rows.Files, report.Rows.Total], Columns);
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
            io.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{phase.Name,-20} {phase.Seconds,8:0.000} s {phase.AllocatedMegabytes,8:N0} MB allocated {phase.PeakMegabytes,8:N0} MB at its peak so far"));
        }

        return FileErrors.Tell(report, io);
    }

    private static readonly TableColumn<FileCounts>[] Columns =
    [
        new("file", "file", b => b.File),
        new("kind", "kind", b => b.Kind),
        new("read", "read", b => b.Read),
        new("loaded", "loaded", b => b.Loaded),
        new("duplicate", "same", b => b.Duplicate),
        new("replaced", "replaced", b => b.Replaced),
        new("rejected", "rejected", b => b.Rejected),
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

            if (file.Footers + file.RepeatedHeaders > 0)
            {
                io.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{file.SourceFile}: {file.Footers:N0} footer lines and {file.RepeatedHeaders:N0} repeated headers are no rows"));
            }

            foreach (UnreadCells unread in file.UnreadCells)
            {
                io.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{file.SourceFile}: {unread.Cells:N0} cells of {unread.Field} count as unknown ({unread.Code}), first on line {unread.FirstLine}"));
            }
        }

        foreach (ReviewCount list in report.Review.Where(r => r.Open > 0))
        {
            io.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{list.Open,8:N0} to answer in {Path.Combine(settings.Out, "review", list.File)}"));
        }

        foreach (ReviewCount list in report.Review.Where(r => r.NotUnderstood > 0))
        {
            io.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{list.NotUnderstood,8:N0} answers not understood, see the notes in {Path.Combine(settings.Out, "review", list.File)}"));
        }

        io.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{report.DataFaults,8:N0} contradictions in the data, in {Path.Combine(settings.Out, "review", ReviewNames.DataFaults)}"));
        io.Out.WriteLine(report.Refusals.Count == 0 ? "The books balance. The store is current." : $"The books balance. The store is current without {report.Refusals.Count} of the files.");
    }
}
