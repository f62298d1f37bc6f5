using PartsSignal.Analysis.PartPrediction.Answers;
using PartsSignal.Analysis.PartPrediction.Calls;
using PartsSignal.Analysis.PartPrediction.ModelFiles;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Learning;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>The technician's answer. Reads the last run's model and store; never trains.</summary>
public sealed class LookupCommand(ProgramIo io) : Command<LookupSettings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, LookupSettings settings, CancellationToken cancellationToken)
    {
        var output = new OutputFolder(settings.Out);
        ShopSettings shop = ShopFile.Load(settings.Input);
        ShippedModel model = ModelStore.Read(output);
        LookupFacts facts = LookupStore.Read(output, settings.Input);
        Call call = CallReader.Read(settings, facts, (brands, on) => LookupStore.History(output, settings.Serial!, brands, on), io.Clock);
        Answer answer = AnswerBuilder.Build(call, model, facts, new AnswerOptions { SecondVisitCost = shop.SecondVisitCost });
        switch (settings.Format)
        {
            case OutputFormat.Json: io.Out.WriteLine(AnswerJson.Text(answer, shop.Currency)); break;
            case OutputFormat.Csv: TablePrinter.Print(io.Out, OutputFormat.Csv, answer.Needs, AnswerText.NeedColumns); break;
            default: AnswerText.Print(io.Out, answer, shop.Currency); break;
        }

        return ExitCode.Done;
    }
}
