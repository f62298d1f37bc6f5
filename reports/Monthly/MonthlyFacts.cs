
namespace PartsSignal.Reports.Monthly;

/// <summary>All that a monthly report tells; null where the run did not compute it.</summary>
public sealed record MonthlyFacts
{
    /// <summary>Name of the shop.</summary>
    public required string Shop { get; init; }

    /// <summary>Mark of its money; may be empty.</summary>
    public string Currency { get; init; } = "";

    /// <summary>The month in figures.</summary>
    public required OpeningFacts Opening { get; init; }

    /// <summary>What is rising.</summary>
    public RisingFacts? Rising { get; init; }

    /// <summary>What fails most.</summary>
    public FailureFacts? Failures { get; init; }

    /// <summary>At what age.</summary>
    public AgeFacts? Ages { get; init; }

    /// <summary>What came back.</summary>
    public ReturnFacts? Returns { get; init; }

    /// <summary>Suppliers.</summary>
    public SupplierFacts? Suppliers { get; init; }

    /// <summary>Vans.</summary>
    public VanFacts? Vans { get; init; }

    /// <summary>The predictor.</summary>
    public PredictorFacts? Predictor { get; init; }

    /// <summary>The data itself.</summary>
    public required DataQualityFacts DataQuality { get; init; }

    /// <summary>The report: sections in the order an owner reads them.</summary>
    public MonthlyReport Report() => new(Shop, Currency, Opening.Now.Month, Opening.AsOf, OpeningSection.Sentences(Opening),
    [
        OpeningSection.Build(Opening),
        RisingSection.Build(Rising),
        FailureSection.Build(Failures),
        AgeSection.Build(Ages),
        ReturnSection.Build(Returns, Currency),
        SupplierSection.Build(Suppliers),
        VanSection.Build(Vans, Currency),
        PredictorSection.Build(Predictor),
        DataQualitySection.Build(DataQuality),
    ]);
}
