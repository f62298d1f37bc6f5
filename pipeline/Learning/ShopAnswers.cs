using PartsSignal.Analysis.Prediction.Answers;
using PartsSignal.Analysis.Prediction.ModelFiles;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Learning;

/// <summary>Answers questions from the model and the store of one run. Safe to use from several threads.</summary>
internal sealed class ShopAnswers(ShopSettings settings, ShippedModel model, LookupFacts facts, CallReader reader)
{
    private readonly Lock _asking = new();

    /// <summary>The shop's settings.</summary>
    public ShopSettings Settings => settings;

    /// <summary>Last day whose closed jobs the predictor learned from, or null if it learned from none.</summary>
    public DateOnly? LearnedTo => model.LearnedTo;

    /// <summary>Appliance types of the store.</summary>
    public IReadOnlyList<string> ApplianceTypes => facts.ApplianceTypes;

    /// <summary>Reads the last run.</summary>
    /// <exception cref="BadInputException">There is no run yet, or one of the shop's own tables has faults.</exception>
    public static ShopAnswers Read(OutputFolder output, string input)
    {
        ShopSettings settings = ShopFile.Load(input);
        ShippedModel model = ModelStore.Read(output);
        LookupFacts facts = LookupStore.Read(output, input);
        var words = WordSets.Load(input);
        var reader = new CallReader(
            facts,
            ShopComplaints.Table(input, facts),
            () => LookupStore.DateCodes(output, input),
            (serial, brands, on) => LookupStore.History(output, serial, brands, on),
            facts.Languages.Count == 0 ? words.Appliances : words.Appliances.For(facts.Languages));
        return new ShopAnswers(settings, model, facts, reader);
    }

    /// <summary>The costs an answer weighs, from the shop's settings.</summary>
    public static AnswerOptions Options(ShopSettings settings) => new() { SecondVisitCost = settings.SecondVisitCost };

    /// <summary>Answers a question that has no faults.</summary>
    public Answer Ask(CallQuestion question, DateOnly today)
    {
        // The complaint words and the predictor reuse scratch memory between questions.
        lock (_asking)
        {
            return AnswerBuilder.Build(reader.Read(question, today), model, facts, Options(settings));
        }
    }
}
