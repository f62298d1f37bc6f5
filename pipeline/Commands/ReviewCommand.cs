using System.ComponentModel;
using System.Globalization;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Review;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Options of <c>review</c>.</summary>
internal sealed class ReviewSettings : CommandSettings
{
    [CommandOption("--write <FILE>")]
    [Description("Write all questions to this workbook, to fill in")]
    public string? Write { get; init; }

    [CommandOption("--read <FILE>")]
    [Description("Read the answers of a workbook that was filled in")]
    public string? Read { get; init; }

    [CommandOption("--input <FOLDER>")]
    [Description("Folder with the shop's files; default: that of the last run")]
    public string? Input { get; init; }

    [CommandOption("--out <FOLDER>")]
    [Description("Folder of the last load")]
    [DefaultValue("out")]
    public string Out { get; init; } = "out";
}

/// <summary>Counts the questions about words and numbers, writes them to a workbook, or reads its answers.</summary>
internal sealed class ReviewCommand(ProgramIo io) : Command<ReviewSettings>
{
    public override int Execute(CommandContext context, ReviewSettings settings, CancellationToken cancellationToken)
    {
        var output = new OutputFolder(settings.Out);
        if (!Directory.Exists(output.Review))
        {
            throw new BadInputException($"--out {settings.Out}: there are no questions here yet. Run 'partssignal load' first.");
        }

        string input = ShopInUse.Input(settings.Input, output);
        ShopInUse.PrintName(io.Out, OutputFormat.Table, ShopFile.Load(input));
        IReadOnlyList<QuestionList> lists = QuestionList.All(output.Review, input);
        if (settings.Read is { } filled)
        {
            return ReadAnswers(filled, output, input, lists);
        }

        foreach (QuestionList list in lists)
        {
            io.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{list.Open,8:N0} to answer: {list.Title}"));
        }

        if (settings.Write is { } path)
        {
            WriteQuestions(path, lists);
        }
        else
        {
            io.Out.WriteLine($"Next: review --write {ReviewWorkbook.FileName}");
        }

        return ExitCode.Done;
    }

    private void WriteQuestions(string path, IReadOnlyList<QuestionList> lists)
    {
        if (File.Exists(path))
        {
            throw new BadInputException($"--write {path}: there is such a file already, perhaps with answers. Choose another name.");
        }

        using (FileStream file = File.Create(path + ".part"))
        {
            ReviewWorkbook.Write(file, lists);
        }

        File.Move(path + ".part", path);
        io.Out.WriteLine($"Saved {path}. Fill in the yellow columns, then: review --read {path}");
    }

    private int ReadAnswers(string path, OutputFolder output, string input, IReadOnlyList<QuestionList> lists)
    {
        if (!File.Exists(path))
        {
            throw new BadInputException($"--read {path}: there is no such file.");
        }

        WorkbookAnswers answers = ReviewWorkbook.Read(path, Path.GetFileName(path), lists);
        IReadOnlyList<string> faults = answers.Save(output.Review, input);
        io.Out.WriteLine($"{Counted.Of(answers.Count, "answer")} read. The next run uses them.");
        foreach (string fault in faults)
        {
            io.Error.WriteLine(fault);
        }

        return faults.Count == 0 ? ExitCode.Done : ExitCode.BadInput;
    }
}
