using System.ComponentModel;
using System.Globalization;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Publishing;
using PartsSignal.Pipeline.Running;
using PartsSignal.Pipeline.Staging;
using PartsSignal.Pipeline.Understanding;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Options of <c>forget</c>.</summary>
internal sealed class ForgetSettings : CommandSettings
{
    [CommandOption("--customer <TEXT>")]
    [Description("Name, phone number or address as in the shop's files")]
    public string? Customer { get; init; }

    [CommandOption("--input <FOLDER>")]
    [Description("Folder with the shop's files and its shop.json")]
    [DefaultValue("data-sample")]
    public string Input { get; init; } = "data-sample";

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

        if (!Directory.Exists(settings.Input))
        {
            throw new BadInputException($"--input {settings.Input}: there is no such folder. Check the path.");
        }

        (ShopSettings shop, _) = ProposedMaps.Complete(settings.Input, ShopFile.Load(settings.Input), cancellationToken);
        var output = new OutputFolder(settings.Out);
        var key = IdentityKey.LoadOrMake(output.Key);
        FoundCustomer found = CustomerSearch.Find(SourceFile.Find(settings.Input, shop), shop, key, settings.Customer, cancellationToken);
        if (found.Rows == 0)
        {
            throw new BadInputException("No row of the shop's files has that name, phone number or address. Type it as it stands there, and check --input.");
        }

        ForgottenCustomers.Load(output.Forgotten, key).With(found.Identifiers).Save(output.Forgotten);
        int code = File.Exists(output.RunRecord)
            ? await new RunCommand(io).ExecuteAsync(context, new RunSettings { Input = settings.Input, Out = settings.Out }, cancellationToken).ConfigureAwait(false)
            : await new LoadCommand(io).ExecuteAsync(context, new LoadSettings { Input = settings.Input, Out = settings.Out }, cancellationToken).ConfigureAwait(false);
        using (await OutputTransaction.BeginAsync(output, io.Clock, cancellationToken).ConfigureAwait(false))
        {
            // The store before this one is kept for readers, and it still knows the customer.
            new StoreSwap(output.Store).DropPrevious();
        }

        io.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Forgotten: {Counted.Of(found.Rows, "row")} of {Counted.Of(found.Files, "file")}. The jobs stay, without the customer. Later loads leave the customer out as well. Your own files still hold the rows."));
        return code;
    }
}
