using System.ComponentModel;
using System.Globalization;
using PartsSignal.Pipeline.Bench;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.FullRun;
using PartsSignal.Pipeline.Staging;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Options of <c>forget</c>.</summary>
internal sealed class ForgetSettings : CommandSettings
{
    [CommandOption("--customer <TEXT>")]
    [Description("Name, phone number or address as in the shop's files")]
    public string? Customer { get; init; }

    [CommandOption("--input <FOLDER>")]
    [Description("Folder with the shop's files and its shop.json; default: that of the last run")]
    public string? Input { get; init; }

    [CommandOption("--out <FOLDER>")]
    [Description("Folder of the store")]
    [DefaultValue("out")]
    public string Out { get; init; } = "out";
}

/// <summary>
/// Finds a customer in the shop's files by name, phone or address, puts the customer's identifiers on the list of those to
/// be left out, and reads everything again. The jobs stay, without who they were for and what was said.
/// </summary>
internal sealed class ForgetCommand(ProgramIo io) : AsyncCommand<ForgetSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, ForgetSettings settings, CancellationToken cancellationToken)
    {
        if (string.IsNullOrWhiteSpace(settings.Customer))
        {
            throw new BadInputException("--customer: give the customer's name, phone number or address.");
        }

        var output = new OutputFolder(settings.Out);
        string input = ShopInUse.Input(settings.Input, output);
        if (!Directory.Exists(input))
        {
            throw new BadInputException($"--input {input}: there is no such folder. Check the path.");
        }

        FoundCustomer found = CustomerRemoval.Mark(input, output, settings.Customer, cancellationToken);
        int code = File.Exists(output.RunRecord)
            ? await new RunCommand(io).ExecuteAsync(context, new RunSettings { Input = input, Out = settings.Out }, cancellationToken).ConfigureAwait(false)
            : await new LoadCommand(io).ExecuteAsync(context, new LoadSettings { Input = input, Out = settings.Out }, cancellationToken).ConfigureAwait(false);
        await CustomerRemoval.DropPreviousAsync(output, io.Clock, cancellationToken).ConfigureAwait(false);
        if (ShopFolder.With(input) is { } shop)
        {
            var history = new ShopHistory(shop, io.Clock);
            history.Clear();
            history.EndForgetting();
            io.Out.WriteLine("Earlier updates and set-aside files were deleted too, because they may contain the customer.");
        }

        io.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Forgotten: {Counted.Of(found.Rows, "row")} of {Counted.Of(found.Files, "file")}. The jobs stay, without the customer. Later loads leave the customer out as well. Your own files and earlier backups still hold the rows."));
        return code;
    }
}
