using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Config;

/// <summary>Everything <c>shop.json</c> can say. Every key is optional.</summary>
internal sealed record ShopSettings
{
    /// <summary>Name shown on the report.</summary>
    public string Shop { get; init; } = "the shop";

    /// <summary>Currency mark shown beside money, for example EUR.</summary>
    public string Currency { get; init; } = "";

    /// <summary>Default date order of the files: dmy, mdy, ymd, or auto (decided once per file).</summary>
    public string DateOrder { get; init; } = "auto";

    /// <summary>Default number style: point (1,234.50), comma (1.234,50), or auto (decided once per file).</summary>
    public string NumberStyle { get; init; } = "auto";

    /// <summary>Last day the data speaks for, or null for the newest day in the job log.</summary>
    public DateOnly? AsOf { get; init; }

    /// <summary>The files and how to read them, oldest export first: of two exports of one job the later entry wins.</summary>
    public IReadOnlyList<SourceMap> Sources { get; init; } = [];

    /// <summary>What a person has answered to the questions of <c>inspect</c>: key of the question to the choice.</summary>
    public IReadOnlyDictionary<string, string> Answers { get; init; } = new Dictionary<string, string>();

    /// <summary>The vans.</summary>
    public IReadOnlyList<ShopVan> Vans { get; init; } = [];

    /// <summary>What one avoidable second visit costs the shop, in its currency.</summary>
    public decimal SecondVisitCost { get; init; } = 85m;

    /// <summary>True if the shop gave <see cref="SecondVisitCost"/>; false: it is the default. No key of the file.</summary>
    internal bool SecondVisitCostGiven { get; init; }

    /// <summary>Cost of holding stock, per year, as a share of its price (0 to 1).</summary>
    public double HoldingCostRate { get; init; } = 0.20;

    /// <summary>A job on the same unit for the same complaint within so many days is a callback.</summary>
    public int CallbackDays { get; init; } = 30;

    /// <summary>Days between two restockings of a van.</summary>
    public int ReviewDays { get; init; } = 7;

    /// <summary>Lead time where the orders tell none, in days.</summary>
    public int LeadTimeDays { get; init; } = 4;

    /// <summary>Wanted share of jobs finished at the first visit (0 to 1).</summary>
    public double ServiceTarget { get; init; } = 0.90;

    /// <summary>Money per van when neither the van nor the command line says.</summary>
    public decimal VanBudget { get; init; } = 1500m;

    /// <summary>Space per van when neither the van nor the command line says, in space units (a small part is 1).</summary>
    public double VanSpace { get; init; } = 200;

    /// <summary>Parts of these size classes stay off the vans.</summary>
    public IReadOnlyList<string> OffVanSizes { get; init; } = ["bulky"];

    /// <summary>How technicians are kept: by their names, or by initials.</summary>
    public string Technicians { get; init; } = "names";

    /// <summary>Days after which a file of refused rows is removed.</summary>
    public int RejectsDays { get; init; } = 90;

    /// <summary>How much one input file may ask of this machine.</summary>
    public ReadingLimits Limits { get; init; } = new();

    /// <summary>Seed of everything random.</summary>
    public int Seed { get; init; } = 20240229;
}

/// <summary>One van.</summary>
/// <param name="Van">Its name, in the job log if it names vans.</param>
/// <param name="Budget">Money for its stock, or null for the shop's default.</param>
/// <param name="Space">Space units, or null for the shop's default.</param>
internal sealed record ShopVan(string Van, decimal? Budget, double? Space)
{
    /// <summary>Who drives it, as the job log names them: their jobs are the van's where the log names no van.</summary>
    public IReadOnlyList<string> Technicians { get; init; } = [];
}
