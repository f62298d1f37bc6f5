namespace PartsSignal.Reports.Phone;

/// <summary>Everything the phone page carries, so that it answers without a network.</summary>
public sealed record LookupData
{
    /// <summary>Name of the shop.</summary>
    public required string Shop { get; init; }

    /// <summary>Mark of its money; may be empty.</summary>
    public string Currency { get; init; } = "";

    /// <summary>Last day the data speaks for.</summary>
    public required DateOnly AsOf { get; init; }

    /// <summary>What a call may need, in the order of all arrays of odds.</summary>
    public required IReadOnlyList<string> Needs { get; init; }

    /// <summary>The weights, or null if the predictor is no sum of weights; <see cref="Tables"/> then answer.</summary>
    public LookupWeights? Weights { get; init; }

    /// <summary>Odds by <c>family/kind</c> and <c>type/kind</c>, per mille, where the predictor is no sum of weights.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<int>> Tables { get; init; } = new Dictionary<string, IReadOnlyList<int>>();

    /// <summary>Models by number.</summary>
    public IReadOnlyList<LookupModel> Models { get; init; } = [];

    /// <summary>Kinds of complaint.</summary>
    public IReadOnlyList<LookupKind> Kinds { get; init; } = [];

    /// <summary>Parts by <c>family/component</c>, the most used first.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<LookupPart>> Parts { get; init; } = new Dictionary<string, IReadOnlyList<LookupPart>>();

    /// <summary>By model, then by part: jobs on that very model that used it.</summary>
    public IReadOnlyDictionary<string, IReadOnlyDictionary<string, long>> OnModel { get; init; } = new Dictionary<string, IReadOnlyDictionary<string, long>>();

    /// <summary>The shop's checks.</summary>
    public IReadOnlyList<LookupCheck> Checks { get; init; } = [];

    /// <summary>Opening work by appliance type, then by its name.</summary>
    public IReadOnlyDictionary<string, IReadOnlyDictionary<string, LookupOpening>> Openings { get; init; } =
        new Dictionary<string, IReadOnlyDictionary<string, LookupOpening>>();

    /// <summary>The table of complaint words, in its order.</summary>
    public IReadOnlyList<LookupPhrase> Phrases { get; init; } = [];

    /// <summary>Words of everyday speech that are never taken for a slip of the pen.</summary>
    public IReadOnlyList<string> CommonWords { get; init; } = [];

    /// <summary>Shorthand and what it stands for.</summary>
    public IReadOnlyDictionary<string, string> ShortWords { get; init; } = new Dictionary<string, string>();

    /// <summary>Words that deny what stands beside them.</summary>
    public LookupNegations Negations { get; init; } = new([], [], []);

    /// <summary>What it costs to come twice, or to bring a part for nothing.</summary>
    public LookupCosts Costs { get; init; } = new(85, 12, 0.15, 0.02);
}

/// <summary>A predictor that is a sum of weights.</summary>
/// <param name="Scale">Weights are whole numbers; divided by this they are log odds.</param>
/// <param name="Facts">By fact: place of a need and its weight, one after the other.</param>
/// <param name="Allowed">Needs an appliance type can have.</param>
/// <param name="Background">Overall shares of the needs.</param>
/// <param name="BackgroundShare">Share of every answer that comes from them, 0 to 1.</param>
/// <param name="Temperature">Temperature, above 0.</param>
/// <param name="Words">Words the predictor knows, most frequent first.</param>
/// <param name="Reader">Second reading of complaints.</param>
public sealed record LookupWeights(
    int Scale, IReadOnlyDictionary<string, IReadOnlyList<int>> Facts, IReadOnlyDictionary<string, int[]> Allowed,
    IReadOnlyList<double> Background, double BackgroundShare, double Temperature, IReadOnlyList<string> Words, LookupReader Reader);

/// <summary>How earlier complaints of each kind were worded.</summary>
/// <param name="Kinds">The kinds.</param>
/// <param name="Jobs">Jobs of each.</param>
/// <param name="Counts">By stem: jobs of each kind that hold it.</param>
public sealed record LookupReader(IReadOnlyList<string> Kinds, IReadOnlyList<int> Jobs, IReadOnlyDictionary<string, int[]> Counts);

/// <summary>Words that stand for a kind of complaint.</summary>
public sealed record LookupPhrase(string Kind, IReadOnlyList<string> Types, IReadOnlyList<string> Words);

/// <summary>Words that deny what stands beside them.</summary>
/// <param name="Before">Words that deny what follows them.</param>
/// <param name="Between">Words that may stand between.</param>
/// <param name="After">Words that deny what they follow.</param>
public sealed record LookupNegations(IReadOnlyList<string> Before, IReadOnlyList<string> Between, IReadOnlyList<string> After);

/// <summary>Opening work.</summary>
public sealed record LookupOpening(double Minutes, string Caution);

/// <summary>Costs that decide whether a part is brought.</summary>
/// <param name="SecondVisit">An avoidable second visit.</param>
/// <param name="Handling">Handling of a part brought for nothing.</param>
/// <param name="LostShare">Share of its price lost when it cannot be returned, 0 to 1.</param>
/// <param name="ReturnShare">Share lost when it can.</param>
public sealed record LookupCosts(double SecondVisit, double Handling, double LostShare, double ReturnShare);

/// <summary>A model of the list.</summary>
public sealed record LookupModel(string Number, string Family, string? Type, string? Brand);

/// <summary>A kind of complaint.</summary>
/// <param name="Kind">Its stored name.</param>
/// <param name="Types">Appliance types that have it; empty: all.</param>
/// <param name="Words">Words it is found by.</param>
public sealed record LookupKind(string Kind, IReadOnlyList<string> Types, string Words);

/// <summary>A current part.</summary>
/// <param name="Number">Current number.</param>
/// <param name="Text">What it is, or null if not known.</param>
/// <param name="Quantity">Pieces usually needed.</param>
/// <param name="Price">Price of one, or null if not known.</param>
/// <param name="Made">False: no longer made and nothing replaces it.</param>
/// <param name="Seen">Times fitted on the family.</param>
/// <param name="Old">Older numbers it replaces.</param>
/// <param name="Vans">What each van was counted to hold.</param>
/// <param name="Returnable">True: its supplier takes it back.</param>
public sealed record LookupPart(
    string Number, string? Text, int Quantity, decimal? Price, bool Made, long Seen, IReadOnlyList<string> Old, IReadOnlyList<LookupHolding> Vans,
    bool Returnable = false)
{
    /// <summary>The price with its currency, as people write it, or null if not known.</summary>
    public string? Cost { get; init; }
}

/// <summary>Pieces on a van.</summary>
public sealed record LookupHolding(string Van, int Pieces);

/// <summary>One check of the shop's table; types and complaints empty: for all.</summary>
public sealed record LookupCheck(
    IReadOnlyList<string> Types, IReadOnlyList<string> Complaints, string Component, string What, double Minutes, string Tool, string Good,
    string Bad, string? Opening, double Finds, double Share, string Caution, bool First);
