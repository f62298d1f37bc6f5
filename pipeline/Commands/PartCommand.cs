using System.ComponentModel;
using System.Globalization;
using PartsSignal.Analysis.CrossReference;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Publishing;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Options of <c>part</c>.</summary>
internal sealed class PartSettings : CommandSettings
{
    [CommandArgument(0, "<NUMBER>")]
    [Description("Any number: current, old, or a supplier's own")]
    public string Number { get; init; } = "";

    [CommandOption("--input <FOLDER>")]
    [Description("Folder with the shop's shop.json; default: that of the last run")]
    public string? Input { get; init; }

    [CommandOption("--out <FOLDER>")]
    [Description("Folder that holds the store")]
    [DefaultValue("out")]
    public string Out { get; init; } = "out";

    [CommandOption("--as-of <DAY>")]
    [Description("Follow only replacements known on this day, such as 2026-11-24")]
    public string? AsOf { get; init; }

    [CommandOption("--format <FORMAT>")]
    [Description("table, csv or json")]
    [DefaultValue(OutputFormat.Table)]
    public OutputFormat Format { get; init; }
}

/// <summary>Prints everything known about one part number.</summary>
internal sealed class PartCommand(ProgramIo io) : Command<PartSettings>
{
    public override int Execute(CommandContext context, PartSettings settings, CancellationToken cancellationToken)
    {
        if (CompactKey.From(settings.Number).Length == 0)
        {
            throw new BadInputException($"NUMBER '{settings.Number}' has no letters or digits. Type the number from the part, the label or the invoice.");
        }

        var output = new OutputFolder(settings.Out);
        if (!Directory.Exists(output.Store))
        {
            throw new BadInputException($"--out {settings.Out}: there is no store here yet. Run 'partssignal run' first.");
        }

        using Database database = CurrentStore.Open(output);
        PartLookup found = PartCardReader.Find(database, settings.Number, Day(settings.AsOf));
        if (found.Card is null)
        {
            throw new BadInputException(Unknown(settings.Number, found));
        }

        string input = ShopInUse.Input(settings.Input, output);
        ShopInUse.PrintName(io.Out, settings.Format, Directory.Exists(input) ? ShopFile.Load(input) : new ShopSettings());
        PartPrinter.Print(io.Out, settings.Format, found.Card);
        return ExitCode.Done;
    }

    private static string Unknown(string typed, PartLookup found) =>
        found.Meanings.Count > 1 ? $"Part {typed} can mean {string.Join(" or ", found.Meanings)}. Ask for one of them."
        : found.Suggestions.Count > 0 ? $"Part {typed} is unknown. Similar numbers: {string.Join(", ", found.Suggestions.Select(s => s.Number))}. One digit off is a different part, so check the label."
        : $"Part {typed} is unknown, and no known number is similar.";

    private static DateOnly? Day(string? text) =>
        text is null ? null
        : DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) ? day
        : throw new BadInputException($"--as-of {text}: is not a date. Write it as 2026-11-24.");
}
