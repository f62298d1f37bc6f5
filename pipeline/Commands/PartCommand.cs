using System.Globalization;
using PartsSignal.Analysis.CrossReference;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Publishing;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>The cross-reference of one number: what it is now, where it fits, what it costs, how good it is.</summary>
internal sealed class PartCommand(ProgramIo io) : Command<PartSettings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, PartSettings settings, CancellationToken cancellationToken)
    {
        if (CompactKey.From(settings.Number).Length == 0)
        {
            throw new BadInputException($"NUMBER '{settings.Number}': has no letter and no digit. Type the number from the part, the label or the invoice.");
        }

        var output = new OutputFolder(settings.Out);
        if (!Directory.Exists(output.Store))
        {
            throw new BadInputException($"--out {settings.Out}: holds no store; load the shop's files first.");
        }

        using Database database = CurrentStore.Open(output);
        PartLookup found = PartCardReader.Find(database, settings.Number, Day(settings.AsOf));
        if (found.Card is null)
        {
            throw new BadInputException(Unknown(settings.Number, found));
        }

        PartPrinter.Print(io.Out, settings.Format, found.Card);
        return ExitCode.Done;
    }

    private static string Unknown(string typed, PartLookup found) =>
        found.Meanings.Count > 1 ? $"Part {typed}: means {string.Join(" and ", found.Meanings)}. Ask for one of these."
        : found.Suggestions.Count > 0 ? $"Part {typed}: not known. Close to it: {string.Join(", ", found.Suggestions.Select(s => s.Number))}. One digit is another part: check the label."
        : $"Part {typed}: not known, and nothing known is close to it.";

    private static DateOnly? Day(string? text) =>
        text is null ? null
        : DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) ? day
        : throw new BadInputException($"--as-of {text}: write a day as YYYY-MM-DD.");
}
