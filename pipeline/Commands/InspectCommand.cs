using System.ComponentModel;
using System.Globalization;
using System.IO.Enumeration;
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

    [CommandOption("--answer <KEY=CHOICE>")]
    [Description("Answer a question and save the answer in shop.json; may be given several times")]
    public string[] Answers { get; init; } = [];

    [CommandOption("--format <FORMAT>")]
    [Description("table, csv or json")]
    [DefaultValue(OutputFormat.Table)]
    public OutputFormat Format { get; init; }
}

/// <summary>Shows how files look, proposes column maps, and asks about anything unclear before a load.</summary>
internal sealed class InspectCommand(ProgramIo io) : Command<InspectSettings>
{
    private static readonly TableColumn<FileColumn>[] Columns =
    [
        new("file", "file", c => c.File),
        new("sheet", "sheet", c => c.Sheet),
        new("column", "column", c => c.Column.Column),
        new("field", "gives", c => c.Column.Field ?? "not read"),
        new("reason", "because", c => c.Column.Reason),
    ];

    private static readonly TableColumn<FileColumn>[] ColumnsOfOne = Columns[2..];

    public override int Execute(CommandContext context, InspectSettings settings, CancellationToken cancellationToken)
    {
        Dictionary<string, string> given = AnswersIn(settings);
        var shops = new List<ShopInspection>();
        var saved = new List<string>();
        foreach ((string folder, IReadOnlyList<InputFile> files) in Expand(settings.Files))
        {
            ShopSettings shop = ShopFile.Load(folder);
            var answers = new Dictionary<string, string>(shop.Answers, StringComparer.Ordinal);
            foreach ((string key, string choice) in given)
            {
                answers[key] = choice;
            }

            ShopInspection inspection = new Inspector(shop.Limits, WordSets.Load(folder), answers).Inspect(files, cancellationToken);
            shops.Add(inspection);
            if (settings.Write || given.Count > 0)
            {
                saved.Add(ProposedMaps.Save(folder, inspection, given, settings.Write, () => new Inspector(shop.Limits, WordSets.Load(folder), shop.Answers).Inspect(files, cancellationToken)));
            }
        }

        Print(shops, settings.Format);
        foreach (string line in settings.Format == OutputFormat.Table ? saved : [])
        {
            io.Out.WriteLine(line);
        }

        return shops.Any(s => s.Tables.Any(t => t.Map is not null)) ? ExitCode.Done : ExitCode.BadInput;
    }

    private static Dictionary<string, string> AnswersIn(InspectSettings settings)
    {
        var answers = new Dictionary<string, string>(StringComparer.Ordinal);
        var faults = new List<string>();
        foreach (string answer in settings.Answers)
        {
            int at = answer.LastIndexOf('=');
            if (at <= 0 || at == answer.Length - 1)
            {
                faults.Add($"--answer {answer}: write KEY=CHOICE, as inspect shows them.");
            }
            else
            {
                answers[answer[..at]] = answer[(at + 1)..];
            }
        }

        return faults.Count == 0 ? answers : throw new BadInputException(faults);
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
                IReadOnlyList<InputFile> files = Directory.Exists(path) ? TablesIn(path) : IsPattern(path) ? Matching(path, folder) : InputFiles.Single(path, ShopFile.Load(folder).Limits);
                found[folder] = [.. found.GetValueOrDefault(folder, []).Concat(files).DistinctBy(f => f.Name)];
            }
            catch (BadInputException bad)
            {
                faults.AddRange(bad.Faults);
            }
        }

        return faults.Count == 0 ? found : throw new BadInputException(faults);
    }

    private static IReadOnlyList<InputFile> TablesIn(string folder) => ShopTables.In(folder, ShopFile.Load(folder).Limits) is { Count: > 0 } tables ? tables : throw ShopTables.None(folder);

    // Windows shells hand patterns over as they were typed.
    private static bool IsPattern(string path) => !File.Exists(path) && Path.GetFileName(path).AsSpan().ContainsAny('*', '?');

    private static IReadOnlyList<InputFile> Matching(string path, string folder)
    {
        if (!Directory.Exists(folder))
        {
            throw new BadInputException($"{path}: there is no folder {folder}. Check the path.");
        }

        InputFile[] files = [.. TablesIn(folder).Where(f => FileSystemName.MatchesSimpleExpression(Path.GetFileName(path), f.Name))];
        return files.Length > 0 ? files : throw new BadInputException($"{path}: no spreadsheet or CSV file has such a name.");
    }

    private void Print(IReadOnlyList<ShopInspection> shops, OutputFormat format)
    {
        FileColumn[] columns = [.. shops.SelectMany(s => s.Tables).SelectMany(t => t.Columns.Select(c => new FileColumn(t.File, t.Sheet, c)))];
        if (format == OutputFormat.Json)
        {
            io.Out.WriteLine(InspectJson.Of(shops, TablePrinter.ToJson(columns, Columns)));
        }
        else if (format == OutputFormat.Csv)
        {
            TablePrinter.Print(io.Out, format, columns, Columns);
        }
        else
        {
            foreach (ShopInspection shop in shops)
            {
                Print(shop);
            }
        }
    }

    private void Print(ShopInspection shop)
    {
        foreach (Inspection i in shop.Tables)
        {
            io.Out.WriteLine(i.File);
            io.Out.WriteLine($"  {i.Form}; {(i.HeaderLine == 0 ? "no header" : $"header on line {i.HeaderLine}")}; {i.Rows.ToString("N0", CultureInfo.InvariantCulture)} rows{(i.BadRows == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $", {i.BadRows:N0} of them not whole"))}");
            io.Out.WriteLine(i.Map is null ? "  kind: none" : $"  kind: {i.Map.Kind}{(i.Map.DateOrder is { } order ? $"; dates {order}" : "")}{(i.Map.NumberStyle is { } style ? $"; decimal {style}" : "")}");
            io.Out.WriteLine();
            TablePrinter.Print(io.Out, OutputFormat.Table, [.. i.Columns.Select(c => new FileColumn(i.File, i.Sheet, c))], ColumnsOfOne);
            io.Out.WriteLine();
            foreach (string doubt in i.Doubts)
            {
                io.Out.WriteLine($"  ? {doubt}");
            }

            ReadingQuestion[] own = [.. shop.Questions.Where(q => q.File == i.File && q.Sheet == i.Sheet)];
            foreach (ReadingQuestion question in own)
            {
                Print(question);
            }

            foreach (string note in i.Notes)
            {
                io.Out.WriteLine($"  - {note}");
            }

            io.Out.WriteLine(i.Doubts.Count + own.Length == 0 ? "  No questions." : "");
        }

        if (shop.Questions.Count > 0)
        {
            io.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{shop.Questions.Count} {(shop.Questions.Count == 1 ? "question" : "questions")}{(shop.MoreQuestions > 0 ? $", and {shop.MoreQuestions} less important ones later" : "")}. Answer with inspect --answer KEY=CHOICE; until then the default holds."));
        }
    }

    private void Print(ReadingQuestion question)
    {
        io.Out.WriteLine($"  ? {question.Text}");
        io.Out.WriteLine($"      {question.Consequence}");
        foreach (string example in question.Examples)
        {
            io.Out.WriteLine($"      for example {example}");
        }

        io.Out.WriteLine($"      answer {question.Key}= {string.Join(" | ", question.Choices.Take(5).Select(c => c.Value))}; default {question.Default}");
    }

    private sealed record FileColumn(string File, string? Sheet, ProposedColumn Column);
}
