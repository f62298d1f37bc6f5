using PartsSignal.Analysis.Sql;
using PartsSignal.Reports.Components;
using PartsSignal.Reports.Workbook;

namespace PartsSignal.Reports.Monthly;

/// <summary>Which report to write, and the shop's settings that its pages show.</summary>
/// <param name="Shop">Name of the shop.</param>
/// <param name="Currency">Symbol or code of its currency; may be empty.</param>
/// <param name="Month">First day of the month.</param>
/// <param name="AsOf">Last day the data covers.</param>
/// <param name="CallbackDays">Days within which a return counts as a callback.</param>
/// <param name="SecondVisitCost">What one avoidable second visit costs.</param>
/// <param name="ModelCard">The model card, point by point; empty if there is none.</param>
public sealed record MonthlyOptions(
    string Shop, string Currency, DateOnly Month, DateOnly AsOf, int CallbackDays, decimal SecondVisitCost, IReadOnlyList<(string Point, string Text)> ModelCard)
{
    /// <summary>True if <see cref="SecondVisitCost"/> is the program's assumption because the shop gave none.</summary>
    public bool SecondVisitCostAssumed { get; init; }
}

/// <summary>The report of one month: a page, a summary to paste into a message, and a workbook with all tables.</summary>
public sealed class MonthlyReport
{
    internal MonthlyReport(string shop, string currency, DateOnly month, DateOnly asOf, IReadOnlyList<string> sentences, IReadOnlyList<Section> sections) =>
        (Shop, Currency, Month, AsOf, Sentences, Sections) = (shop, currency, month, asOf, sentences, sections);

    /// <summary>First day of the month.</summary>
    public DateOnly Month { get; }

    internal string Shop { get; }

    internal string Currency { get; }

    internal DateOnly AsOf { get; }

    /// <summary>The month in five sentences.</summary>
    internal IReadOnlyList<string> Sentences { get; }

    /// <summary>The sections in reading order; the first is the month in sentences.</summary>
    internal IReadOnlyList<Section> Sections { get; }

    /// <summary>All tables, for the workbook.</summary>
    internal IReadOnlyList<TableView> Tables => [.. Sections.SelectMany(s => s.Tables)];

    /// <summary>Reads the result tables of a session. A section whose tables are not there says what is missing.</summary>
    public static MonthlyReport Read(Database database, MonthlyOptions options) => MonthlyFacts.Read(database, options).Report();

    /// <summary>What is missing on most jobs, how many would count again with it, and how to fix it; or null if nothing single would bring a job back.</summary>
    public static string? FillInFirst(Database database) => Gap.First(Gap.Read(database));

    /// <summary>The page, one self-contained document.</summary>
    public string Page() => MonthlyPage.Render(this);

    /// <summary>The sentences as plain text.</summary>
    public string Summary() => SummaryText.Render(this);

    /// <summary>Writes all tables as an Office Open XML workbook.</summary>
    /// <param name="stream">Receives the bytes; must be writable.</param>
    public void WriteWorkbook(Stream stream) => WorkbookWriter.Write(stream, TableSheets.From(Tables));
}

/// <summary>Everything a monthly report shows; a part is null if the run did not compute it.</summary>
internal sealed record MonthlyFacts
{
    public required string Shop { get; init; }

    public string Currency { get; init; } = "";

    public required OpeningFacts Opening { get; init; }

    public RisingFacts? Rising { get; init; }

    public BadBatchFacts? Batches { get; init; }

    public FailureFacts? Failures { get; init; }

    public AgeFacts? Ages { get; init; }

    public ReturnFacts? Returns { get; init; }

    public SupplierFacts? Suppliers { get; init; }

    public VanFacts? Vans { get; init; }

    public PredictorFacts? Predictor { get; init; }

    public required DataQualityFacts DataQuality { get; init; }

    /// <summary>Reads the facts of one month.</summary>
    public static MonthlyFacts Read(Database database, MonthlyOptions options)
    {
        RisingFacts? rising = RisingReader.Read(database, options.Month);
        BadBatchFacts? batches = BadBatchSection.Read(database, options.AsOf);
        ReturnFacts? returns = ReturnSection.Read(database, options);
        DataQualityFacts dataQuality = DataQualitySection.Read(database);
        return new MonthlyFacts
        {
            Shop = options.Shop,
            Currency = options.Currency,
            Opening = OpeningSection.Read(database, options, rising, returns, dataQuality, batches),
            Rising = rising,
            Batches = batches,
            Failures = FailureSection.Read(database, options.Month),
            Ages = AgeSection.Read(database),
            Returns = returns,
            Suppliers = SupplierSection.Read(database),
            Vans = VanReader.Read(database, options.Currency),
            Predictor = PredictorSection.Read(database, options),
            DataQuality = dataQuality,
        };
    }

    /// <summary>The report, its sections in the order an owner reads them.</summary>
    public MonthlyReport Report() => new(Shop, Currency, Opening.Now.Month, Opening.AsOf, OpeningSentences.Write(Opening),
    [
        OpeningSection.Build(Opening),
        RisingSection.Build(Rising),
        BadBatchSection.Build(Batches),
        FailureSection.Build(Failures),
        AgeSection.Build(Ages),
        ReturnSection.Build(Returns, Currency),
        SupplierSection.Build(Suppliers),
        VanSection.Build(Vans, Currency),
        PredictorSection.Build(Predictor),
        DataQualitySection.Build(DataQuality),
    ]);
}
