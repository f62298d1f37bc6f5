using PartsSignal.Analysis.Prediction.ModelFiles;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Learning;
using PartsSignal.Pipeline.Planning;
using PartsSignal.Pipeline.Publishing;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Prints what each van should carry for its money and space.</summary>
internal sealed class VanCommand(ProgramIo io) : Command<VanSettings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, VanSettings settings, CancellationToken cancellationToken)
    {
        List<string> faults = [.. VanQuery.Faults(settings)];
        var output = new OutputFolder(settings.Out);
        if (!Directory.Exists(output.Store))
        {
            faults.Add($"--out {settings.Out}: holds no store; load the shop's files first.");
        }

        if (faults.Count > 0)
        {
            throw new BadInputException(faults);
        }

        ShopSettings shop = ShopFile.Load(settings.Input);
        using Database database = CurrentStore.Open(output);
        if (ShopDataReader.Read(database, shop.AsOf) is not { Jobs.Count: > 0 } data)
        {
            io.Out.WriteLine("No jobs: nothing tells what a van needs.");
            return ExitCode.Done;
        }

        ShippedModel? model = File.Exists(ModelStore.PathOf(output)) ? ModelStore.Read(output) : null;
        BookedJobs booked = BookedSource.Read(database, data.AsOf, model, settings.Input, shop);
        VanPlanOptions options = VanQuery.Options(settings, shop, data);
        ShopPlan plan = ShopPlan.Create(data, new ShopViews(data, options), options, shop.ServiceTarget, booked);
        VanPrinter.Print(io.Out, settings, plan, booked.Note, shop.Currency);
        return ExitCode.Done;
    }
}
