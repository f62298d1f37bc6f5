using System.ComponentModel;
using System.Globalization;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Understanding;
using PartsSignal.Pipeline.Words;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Options of <c>inspect</c>.</summary>
internal sealed class InspectSettings : CommandSettings
{
    [CommandArgument(0, "<FILE>")]
    [Description("Files to look at; a folder means every table in it")]
    public string[] Files { get; init; } = [];

    [CommandOption("--write")]
    [Description("Save the column maps to shop.json next to the files")]
    public bool Write { get; init; }

    [CommandOption("--format <FORMAT>")]
    [Description("table, csv or json")]
    [DefaultValue(OutputFormat.Table)]
    public OutputFormat Format { get; init; }
}

/// <summary>Shows how files look, proposes column maps, and asks about anything unclear before a load.</summary>
internal sealed class InspectCommand(ProgramIo io) : Command<InspectSettings>
{
    private static readonly string[] Tables = [".csv", ".tsv", ".txt", ".xlsx", ".xlsm", ".xls", ".gz", ".zip"];

    private static readonly TableColumn<FileColumn>[] Columns =
    [
        new("file", "file", c => c.File),
        new("column", "column", c => c.Column.Column),
        new("field", "gives", c => c.Column.Field ?? "not read"),
        new("reason", "because", c => c.Column.Reason),
    ];

    private static readonly TableColumn<FileColumn>[] ColumnsOfOne = Columns[1..];

    public override int Execute(CommandContext context, InspectSettings settings, CancellationToken cancellationToken)
    {
        var inspections = new List<Inspection>();
        var maps = new Dictionary<string, List<SourceMap>>(StringComparer.Ordinal);
        foreach ((string folder, IReadOnlyList<InputFile> files) in Expand(settings.Files))
        {
            ShopSettings shop = ShopFile.Load(folder);
            var inspector = new Inspector(shop.Limits, WordSets.Load(folder));
            foreach (InputFile file in files)
            {
                Inspection inspection = inspector.Inspect(file, cancellationToken);
                inspections.Add(inspection);
                if (inspection.Map is { } map)
                {
                    (maps.TryGetValue(folder, out List<SourceMap>? list) ? list : maps[folder] = []).Add(map);
                }
            }
        }

        Print(inspections, settings.Format);
        if (settings.Write)
        {
            Write(maps, settings.Format);
        }

        return inspections.Any(i => i.Map is null) ? ExitCode.BadInput : ExitCode.Done;
    }

    // Files by the folder whose shop.json will name them.
    private static Dictionary<string, IReadOnlyList<InputFile>> Expand(string[] paths)
    {
        var found = new Dictionary<string, IReadOnlyList<InputFile>>(StringComparer.Ordinal);
        var faults = new List<string>();
        foreach (string path in paths)
        {
            try
            {
                string folder = Directory.Exists(path) ? Path.GetFullPath(path) : Path.GetDirectoryName(Path.GetFullPath(path))!;
                IReadOnlyList<InputFile> files = Directory.Exists(path) ? TablesIn(path) : InputFiles.Single(path, ShopFile.Load(folder).Limits);
                found[folder] = [.. found.GetValueOrDefault(folder, []).Concat(files).DistinctBy(f => f.Name)];
            }
            catch (BadInputException bad)
            {
                faults.AddRange(bad.Faults);
            }
        }

        return faults.Count == 0 ? found : throw new BadInputException(faults);
    }

    private static IReadOnlyList<InputFile> TablesIn(string folder)
    {
        string[] ours = ["serial-codes.csv", "complaint-words.csv", "components.csv", "appliance-words.csv", "outcome-words.csv"];
        return [.. new InputFiles(folder, ShopFile.Load(folder).Limits).All
            .Where(f => !f.Name.Contains('/') || f.Entry is not null)
            .Where(f => Tables.Contains(Path.GetExtension(f.Name), StringComparer.OrdinalIgnoreCase))
            .Where(f => !ours.Contains(f.Name, StringComparer.OrdinalIgnoreCase) && !Path.GetFileName(f.Name).StartsWith("checks", StringComparison.OrdinalIgnoreCase))];
    }

    private void Print(IReadOnlyList<Inspection> inspections, OutputFormat format)
    {
        if (format != OutputFormat.Table)
        {
            TablePrinter.Print(io.Out, format, [.. inspections.SelectMany(i => i.Columns.Select(c => new FileColumn(i.File, c)))], Columns);
            return;
        }

        foreach (Inspection i in inspections)
        {
            io.Out.WriteLine(i.File);
            io.Out.WriteLine($"  {i.Form}; {(i.HeaderLine == 0 ? "no header" : $"header on line {i.HeaderLine}")}; {i.Rows.ToString("N0", CultureInfo.InvariantCulture)} rows{(i.BadRows == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $", {i.BadRows:N0} of them not whole"))}");
            io.Out.WriteLine(i.Map is null ? "  kind: none" : $"  kind: {i.Map.Kind}{(i.Map.DateOrder is { } order ? $"; dates {order}" : "")}{(i.Map.NumberStyle is { } style ? $"; decimal {style}" : "")}");
            io.Out.WriteLine();
            TablePrinter.Print(io.Out, format, [.. i.Columns.Select(c => new FileColumn(i.File, c))], ColumnsOfOne);
            io.Out.WriteLine();
            foreach (string doubt in i.Doubts)
            {
                io.Out.WriteLine($"  ? {doubt}");
            }

            foreach (string note in i.Notes)
            {
                io.Out.WriteLine($"  - {note}");
            }

            io.Out.WriteLine(i.Doubts.Count == 0 ? "  No questions." : "");
        }
    }

    private void Write(Dictionary<string, List<SourceMap>> maps, OutputFormat format)
    {
        foreach ((string folder, List<SourceMap> list) in maps)
        {
            ShopFileWriter.Write(folder, list);
            if (format == OutputFormat.Table)
            {
                io.Out.WriteLine($"Saved {list.Count} column {(list.Count == 1 ? "map" : "maps")} to {Path.Combine(folder, ShopFile.Name)}. Next: partssignal load --input {folder}");
            }
        }
    }

    private sealed record FileColumn(string File, ProposedColumn Column);
}
