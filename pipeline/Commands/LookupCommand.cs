using System.ComponentModel;
using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using PartsSignal.Analysis.Prediction.Answers;
using PartsSignal.Analysis.Vocabulary;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Learning;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Options of <c>lookup</c>.</summary>
internal sealed class LookupSettings : CommandSettings
{
    [CommandOption("--model <MODEL>")]
    [Description("Model number from the label, or a model family")]
    public string? Model { get; init; }

    [CommandOption("--complaint <TEXT>")]
    [Description("What the customer said, or a complaint kind such as no_fill")]
    public string? Complaint { get; init; }

    [CommandOption("--serial <SERIAL>")]
    [Description("Serial number: gives the age and what was done to this appliance before")]
    public string? Serial { get; init; }

    [CommandOption("--age <YEARS>")]
    [Description("Age in years, if you know it")]
    public double? Age { get; init; }

    [CommandOption("--type <TYPE>")]
    [TypeDescription]
    public string? ApplianceType { get; init; }

    [CommandOption("--code <CODE>")]
    [Description("Error code on the display")]
    public string? Code { get; init; }

    [CommandOption("--customer <KIND>")]
    [Description("household or contract; default: from the serial, otherwise household")]
    public string? Customer { get; init; }

    [CommandOption("--on <DATE>")]
    [Description("Day of the call, such as 2026-11-24; default: today")]
    public string? On { get; init; }

    [CommandOption("--input <FOLDER>")]
    [Description("Folder with the shop's files, including its own words, checks and serial codes; default: that of the last run")]
    public string? Input { get; init; }

    [CommandOption("--out <FOLDER>")]
    [Description("Folder of the last run")]
    [DefaultValue("out")]
    public string Out { get; init; } = "out";

    [CommandOption("--format <FORMAT>")]
    [Description("table, csv (odds only) or json")]
    [DefaultValue(OutputFormat.Table)]
    public OutputFormat Format { get; init; }

    /// <summary>The question these options ask.</summary>
    public CallQuestion Question() => new()
    {
        Model = Model,
        Complaint = Complaint,
        Serial = Serial,
        ApplianceType = ApplianceType,
        Age = Age,
        Code = Code,
        Customer = Customer,
        On = On,
    };
}

/// <summary>The help of <c>--type</c>, which names the types there are.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class TypeDescriptionAttribute()
    : DescriptionAttribute($"Use if the model is unknown: {string.Join(", ", ApplianceType.Named.SkipLast(1))} or {ApplianceType.Named[^1]}");

/// <summary>Prints what a call will probably need. Reads the last run's model and store and never trains.</summary>
internal sealed class LookupCommand(ProgramIo io) : Command<LookupSettings>
{
    private static readonly JsonSerializerOptions Indented = new(JsonSerializerOptions.Default)
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public override int Execute(CommandContext context, LookupSettings settings, CancellationToken cancellationToken)
    {
        CallQuestion question = settings.Question();
        IReadOnlyList<QuestionFault> faults = question.Faults();
        // A type may be one of the shop's own, which only the store knows.
        if (faults.Any(f => f.Field != CallQuestion.TypeField))
        {
            throw new BadInputException([.. faults.Select(Text)]);
        }

        var output = new OutputFolder(settings.Out);
        var answers = ShopAnswers.Read(output, ShopInUse.Input(settings.Input, output));
        if (question.Faults(answers.ApplianceTypes) is { Count: > 0 } unknown)
        {
            throw new BadInputException([.. unknown.Select(Text)]);
        }

        Answer answer = answers.Ask(question, DateOnly.FromDateTime(io.Clock.GetLocalNow().DateTime));
        string currency = answers.Settings.Currency;
        ShopInUse.PrintName(io.Out, settings.Format, answers.Settings);
        switch (settings.Format)
        {
            case OutputFormat.Json: io.Out.WriteLine(AnswerJson.Create(answer, currency).ToJsonString(Indented)); break;
            case OutputFormat.Csv: TablePrinter.Print(io.Out, OutputFormat.Csv, answer.Needs, AnswerText.NeedColumns); break;
            default: AnswerText.Print(io.Out, answer, currency); break;
        }

        return ExitCode.Done;
    }

    private static string Text(QuestionFault fault) => fault.Field is null
        ? "Give at least one of --model, --serial, --type, --complaint."
        : string.Create(CultureInfo.InvariantCulture, $"--{fault.Field}{(fault.Typed is null ? "" : " " + fault.Typed)}: {fault.Message}");
}
