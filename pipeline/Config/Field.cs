namespace PartsSignal.Pipeline.Config;

/// <summary>One column that a kind of file can give: everything the program knows about it, stated once.</summary>
/// <param name="Name">Name in a column map, unique within the kind.</param>
/// <param name="Cleaner">How a cell becomes a value.</param>
/// <param name="Meaning">What the column says, in one sentence.</param>
internal sealed record Field(string Name, Cleaner Cleaner, string Meaning)
{
    private readonly bool? _refusesRow;
    private readonly ContentClass? _content;

    /// <summary>Kind of file.</summary>
    public string Kind { get; init; } = "";

    /// <summary>Unit of the staged value, or null if it has none.</summary>
    public string? Unit { get; init; }

    /// <summary>Staged table that the value goes to.</summary>
    public string Table { get; init; } = "";

    /// <summary>Staged columns that are made from it, alone or together with other fields; none where it is only read along.</summary>
    public IReadOnlyList<StagedColumnSpec> Staged { get; init; } = [];

    /// <summary>True when a row without it is refused.</summary>
    public bool Essential { get; init; }

    /// <summary>The field whose column is read where the file has none for this one, or null if no other can say it.</summary>
    public string? StandIn { get; init; }

    /// <summary>
    /// True when two rows of one job that differ here tell the job differently, which is listed for the owner. False: they
    /// are the same telling, and the first row speaks for the job.
    /// </summary>
    public bool Identity { get; init; } = true;

    /// <summary>True when the cell names or places a person; it is hashed or scrubbed, never stored.</summary>
    public bool Personal { get; init; }

    /// <summary>True when it belongs to a part line, of which a job row may hold several.</summary>
    public bool PartLine { get; init; }

    /// <summary>How a column that gives it is found.</summary>
    public Found Found { get; init; } = Found.ByWeights;

    /// <summary>What a blank count means, or null if unknown.</summary>
    public int? Blank { get; init; }

    /// <summary>
    /// True when a cell that cannot be read refuses its row; false: it counts as unknown and is tallied. Where the catalog
    /// does not say, essential fields refuse, and so do codes, dates, money and counts.
    /// </summary>
    public bool RefusesRow
    {
        get => _refusesRow ?? RefusesUnlessStated;
        init => _refusesRow = value;
    }

    private bool RefusesUnlessStated => Essential || Cleaner is Cleaner.Code or Cleaner.Day or Cleaner.ApproximateDay or Cleaner.Money or Cleaner.Count;

    /// <summary>What its cells are, roughly, for telling columns apart.</summary>
    public ContentClass Content
    {
        get => _content ?? ContentUnlessStated;
        init => _content = value;
    }

    private ContentClass ContentUnlessStated => Cleaner switch
    {
        Cleaner.Id or Cleaner.JobId or Cleaner.Code or Cleaner.Model or Cleaner.Serial or Cleaner.ErrorCode => ContentClass.Code,
        Cleaner.Day or Cleaner.Time => ContentClass.Date,
        Cleaner.ApproximateDay or Cleaner.BuildDate or Cleaner.FirstMade or Cleaner.LastMade => ContentClass.Year,
        Cleaner.Money or Cleaner.Years or Cleaner.Count or Cleaner.Duration => ContentClass.Number,
        Cleaner.FreeText or Cleaner.NotKept or Cleaner.Complaint or Cleaner.PartDescription or Cleaner.PartsList => ContentClass.Text,
        Cleaner.Flag => ContentClass.Flag,
        Cleaner.Phone => ContentClass.Phone,
        Cleaner.Email => ContentClass.Email,
        _ => ContentClass.Word,
    };
}

/// <summary>How a column that gives a field is found. Weights are fitted for the first way only.</summary>
internal enum Found
{
    /// <summary>By the fitted weights, from its header and its cells together.</summary>
    ByWeights,

    /// <summary>By the words in its cells.</summary>
    ByWords,

    /// <summary>By its header, checked by its cells.</summary>
    ByHeader,

    /// <summary>By its header alone; it takes no column that another field has by its name.</summary>
    ByName,
}

/// <summary>What the cells of a field are, roughly.</summary>
internal enum ContentClass
{
    /// <summary>Days.</summary>
    Date,

    /// <summary>Days or years.</summary>
    Year,

    /// <summary>Amounts and counts.</summary>
    Number,

    /// <summary>Letters and digits that name one thing.</summary>
    Code,

    /// <summary>Several words.</summary>
    Text,

    /// <summary>One of some words or names.</summary>
    Word,

    /// <summary>Yes or no.</summary>
    Flag,

    /// <summary>Phone numbers.</summary>
    Phone,

    /// <summary>E-mail addresses.</summary>
    Email,
}

/// <summary>How a cell becomes a value.</summary>
internal enum Cleaner
{
    /// <summary>A word or short text; marks such as n/a are blank.</summary>
    Word,

    /// <summary>A number of a document, kept as typed.</summary>
    Id,

    /// <summary>The number of a job that another file holds, with the source's prefix.</summary>
    JobId,

    /// <summary>A part number, with the key under which spellings of it meet.</summary>
    Code,

    /// <summary>A model number or a printed pattern of several.</summary>
    Model,

    /// <summary>A serial number; only its hash and the dates it can mean are kept.</summary>
    Serial,

    /// <summary>A date.</summary>
    Day,

    /// <summary>A date; a month or a year stands for its middle day.</summary>
    ApproximateDay,

    /// <summary>A date, with a time if there is one.</summary>
    Time,

    /// <summary>A day, month or year of manufacture, kept as an interval.</summary>
    BuildDate,

    /// <summary>The same; its first day counts.</summary>
    FirstMade,

    /// <summary>The same; its last day counts.</summary>
    LastMade,

    /// <summary>An amount of money.</summary>
    Money,

    /// <summary>A whole number, 0 or more.</summary>
    Count,

    /// <summary>An age in the field's unit, 0 to 100 years.</summary>
    Years,

    /// <summary>A working time; without a unit, hours or minutes as the file votes.</summary>
    Duration,

    /// <summary>Yes or no.</summary>
    Flag,

    /// <summary>Free text, scrubbed of personal details.</summary>
    FreeText,

    /// <summary>Free text that is recognized, so that it is taken for nothing else, and never kept.</summary>
    NotKept,

    /// <summary>What the customer said, scrubbed, with its kind.</summary>
    Complaint,

    /// <summary>A displayed code in capitals without separators.</summary>
    ErrorCode,

    /// <summary>How the job ended, by the table of outcome words.</summary>
    Outcome,

    /// <summary>Whether the job is finished, by the table of status words.</summary>
    Status,

    /// <summary>What a visit was for, by the table of reasons.</summary>
    VisitReason,

    /// <summary>A type of appliance, by the table of appliance words.</summary>
    ApplianceType,

    /// <summary>Household or contract.</summary>
    CustomerKind,

    /// <summary>Small, medium, large or bulky.</summary>
    SizeClass,

    /// <summary>What a line of a replacement list means.</summary>
    SupersessionKind,

    /// <summary>A supplier, unless the map names one for the whole file.</summary>
    Supplier,

    /// <summary>A component, or else what the description's words name.</summary>
    Component,

    /// <summary>A part's description, with the component its words name.</summary>
    PartDescription,

    /// <summary>Several part numbers in one cell.</summary>
    PartsList,

    /// <summary>A name or an address; only hashed.</summary>
    Personal,

    /// <summary>A phone number; only hashed.</summary>
    Phone,

    /// <summary>An e-mail address; only used to scrub texts.</summary>
    Email,
}

/// <summary>One column of a staged table.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Type">What it holds.</param>
/// <param name="Required">True when every row has a value.</param>
internal sealed record StagedColumnSpec(string Name, ColumnType Type, bool Required = false);

/// <summary>What a staged column holds.</summary>
internal enum ColumnType
{
    /// <summary>Few words that many rows share.</summary>
    Word,

    /// <summary>Texts that hardly repeat.</summary>
    Text,

    /// <summary>A keyed hash.</summary>
    Identifier,

    /// <summary>A whole number.</summary>
    Int,

    /// <summary>A floating-point number.</summary>
    Double,

    /// <summary>Money with two decimals.</summary>
    Money,

    /// <summary>True or false.</summary>
    Flag,

    /// <summary>A date.</summary>
    Day,

    /// <summary>A date and time.</summary>
    Time,
}
