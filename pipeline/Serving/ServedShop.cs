using PartsSignal.Analysis.PartPrediction.Answers;
using PartsSignal.Analysis.PartPrediction.Calls;
using PartsSignal.Analysis.PartPrediction.ModelFiles;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Learning;
using PartsSignal.Pipeline.Publishing;
using PartsSignal.Pipeline.Reporting;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Serving;

/// <summary>What the server answers from: the predictor and the store of one run, held in memory.</summary>
public sealed class ServedShop
{
    private readonly ShippedModel _model;
    private readonly LookupFacts _facts;
    private readonly ComplaintClassifier _words;
    private readonly TimeProvider _clock;
    private readonly Lock _asking = new();

    /// <summary>Puts a shop together.</summary>
    public ServedShop(OutputFolder output, ShopSettings settings, ShippedModel model, LookupFacts facts, ComplaintClassifier words, TimeProvider clock) =>
        (Output, Settings, _model, _facts, _words, _clock) = (output, settings, model, facts, words, clock);

    /// <summary>Folder of the run.</summary>
    public OutputFolder Output { get; }

    /// <summary>The shop's settings.</summary>
    public ShopSettings Settings { get; }

    /// <summary>Last day whose closed jobs the predictor learned from; null: none.</summary>
    public DateOnly? LearnedTo => _model.LearnedTo;

    /// <summary>Last day the data speaks for; null: there is no job.</summary>
    public DateOnly? DataUpTo { get; init; }

    /// <summary>Reads the last run.</summary>
    /// <exception cref="BadInputException">There is none, or the shop's tables have faults.</exception>
    public static ServedShop Read(OutputFolder output, string input, TimeProvider clock)
    {
        ShippedModel model = ModelStore.Read(output);
        ShopSettings settings = ShopFile.Load(input);
        LookupFacts facts = LookupStore.Read(output, input);
        using Database database = CurrentStore.Open(output);
        return new ServedShop(output, settings, model, facts, WordSets.Load(input).Complaints, clock) { DataUpTo = ReportMaker.LastDay(database, settings) };
    }

    /// <summary>Answers a question.</summary>
    /// <param name="model">Model number or family as typed; null: not known.</param>
    /// <param name="complaint">Complaint as typed; null: not told.</param>
    /// <param name="type">Appliance type where the model does not say; null: not told.</param>
    /// <param name="age">Age in years, 0 to 80; null: not known.</param>
    public Answer Ask(string? model, string? complaint, string? type, double? age)
    {
        // The table of words keeps what it has seen, so one question at a time.
        lock (_asking)
        {
            KnownModel? found = _facts.Resolve(model)?.Model;
            string kindOf = found?.ApplianceType ?? type ?? Call.Unknown;
            string? text = complaint?.Trim().Replace('_', ' ');
            var call = new Call
            {
                ApplianceType = kindOf,
                Brand = found?.Brand,
                ModelNumber = found?.ModelNumber is { Length: > 0 } number ? number : null,
                ModelFamily = found?.ModelFamily,
                AgeYears = age,
                AgeBasis = age is null ? Call.Unknown : "stated",
                ComplaintText = text,
                ComplaintKind = _words.Kind(text, kindOf == Call.Unknown ? null : kindOf),
                ErrorCode = ErrorCodeText.Find(text),
                CustomerKind = "household",
                Month = _clock.GetLocalNow().Month,
            };
            return AnswerBuilder.Build(call, _model, _facts, new AnswerOptions { SecondVisitCost = Settings.SecondVisitCost });
        }
    }
}
