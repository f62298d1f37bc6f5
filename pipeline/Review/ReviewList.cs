namespace PartsSignal.Pipeline.Review;

/// <summary>File names of the review lists, the same in <c>out/review</c> and in the input folder.</summary>
internal static class ReviewNames
{
    /// <summary>Typed part numbers that no catalog number explains. Answer: the right number, <c>new</c>, or <c>ignore</c>.</summary>
    public const string PartNumbers = "review-part-numbers.csv";

    /// <summary>Complaints that no table word explains. Answer: a complaint kind; the words may be shortened.</summary>
    public const string Complaints = "review-complaints.csv";

    /// <summary>Part descriptions that tell no component. Answer: a component.</summary>
    public const string Components = "review-components.csv";

    /// <summary>Appliance types that no table knows. Answer: an appliance type of the tables.</summary>
    public const string Appliances = "review-appliances.csv";

    /// <summary>Words for how a job ended that no table knows. Answer: an outcome.</summary>
    public const string Outcomes = "review-outcomes.csv";

    /// <summary>Families learned from model numbers. Answer: the family's right name.</summary>
    public const string Families = "review-families.csv";

    /// <summary>Typed models that nothing explains. Answer: a model number of the list, or a family.</summary>
    public const string Models = "review-models.csv";

    /// <summary>Serials that mean several build dates. Answer: year or month.</summary>
    public const string Serials = "review-serials.csv";

    /// <summary>Date codes learned from dated serials. Answer: yes or no.</summary>
    public const string DateCodes = "review-date-codes.csv";

    /// <summary>Numbers that mean two things. Answer: the part number, model number or family meant.</summary>
    public const string Collisions = "review-collisions.csv";

    /// <summary>Contradictions in the data, for reading only.</summary>
    public const string DataFaults = "data-faults.csv";

    /// <summary>All that are answered. Every one of them takes <c>ignore</c>.</summary>
    public static IReadOnlyList<string> All { get; } = [.. ReviewList.All.Select(l => l.File)];
}

/// <summary>A review list: the source of its rows, the key of a row, and how people see it.</summary>
/// <param name="File">Its file name.</param>
/// <param name="Sql">Name of its query.</param>
/// <param name="Identity">Key columns of a row; an answered row is not asked again.</param>
/// <param name="KnownKeys">Query for the keys to suggest from, or null for no suggestions.</param>
internal sealed record ReviewList(string File, string Sql, IReadOnlyList<string> Identity, string? KnownKeys = null)
{
    /// <summary>All lists.</summary>
    public static readonly IReadOnlyList<ReviewList> All =
    [
        new(ReviewNames.PartNumbers, "part_numbers", ["supplier", "typed_key"], "catalog_keys")
        {
            Order = 2,
            Title = "Part numbers",
            Answers = "the right part number, or new if it is a different part",
            Help = "Type the right part number, or “new” if it is a part of its own.",
            Typed = "number",
            About = ["description", "supplier", "example"],
        },
        new(ReviewNames.Complaints, "complaints", ["words"])
        {
            Order = 1,
            Title = "Complaints",
            Answers = "a complaint kind, as listed below; you may shorten the words",
            Help = "Choose what the customer meant.",
            Typed = "words",
            About = ["counted_as", "appliance_type", "example"],
        },
        new(ReviewNames.Components, "components", ["description"])
        {
            Order = 3,
            Title = "Part names",
            Answers = "a component, as listed below",
            Help = "Choose which component it is. Leave it blank to count it separately.",
            Typed = "description",
            About = ["counted_as", "role", "example"],
        },
        new(ReviewNames.Appliances, "appliances", ["appliance_type"])
        {
            Order = 4,
            Title = "Appliance types",
            Answers = "the appliance type that it is another name for; leave it blank to count it separately",
            Help = "Choose which type this is another name for, or “other”. Type the same name again to keep it as a separate type.",
            Typed = "appliance_type",
            About = ["example"],
        },
        new(ReviewNames.Outcomes, "outcomes", ["outcome_word"])
        {
            Order = 5,
            Title = "Outcomes",
            Answers = "what it means, an outcome as listed below; until you answer, a job with a part on it counts as repaired, any other as unknown",
            Help = "Choose how a job with this word ended. Until you do, a job with a part on it counts as repaired, and any other as unknown.",
            Typed = "outcome_word",
            About = ["example"],
        },
        new(ReviewNames.Families, "families", ["learned_family"])
        {
            Order = 8,
            Title = "Model families",
            Answers = "the right name of the family; repeat the name if it is right",
            Help = "Type the right name of the family. If it is right, repeat it.",
            Typed = "learned_family",
            About = ["brand", "model_numbers"],
        },
        new(ReviewNames.Models, "models", ["model_key"], "model_keys")
        {
            Order = 6,
            Title = "Models",
            Answers = "the right model number from the model list, or a family",
            Help = "Type the right model number, or its model family.",
            Typed = "model",
            About = ["counted_as", "brand", "appliance_type", "example"],
        },
        new(ReviewNames.Serials, "serials", ["job_id"])
        {
            Order = 7,
            Title = "Build dates",
            Answers = "the build year or month: 2017 or 2017-04",
            Help = "Type the year or month it was built, such as 2017 or 2017-04.",
            Typed = "model",
            About = ["brand", "candidates", "job_id"],
        },
        new(ReviewNames.DateCodes, "date_codes", ["brand", "serial_form", "date_code"])
        {
            Order = 9,
            Title = "Date codes",
            Answers = "yes if serial numbers of this brand tell the build date this way, no if they do not",
            Help = "Type yes if serial numbers of this brand tell the build date this way, or no. A well-proven rule is used until you say no.",
            Typed = "rule",
            About = ["confirming_examples", "contradicting_examples"],
        },
        new(ReviewNames.Collisions, "collisions", ["fault_kind", "number"])
        {
            Order = 10,
            Title = "Numbers that mean two things",
            Answers = "the part number, model number or family it means",
            Help = "Type the part number, model number or family that is meant.",
            Typed = "number",
            About = ["message", "example"],
        },
    ];

    /// <summary>When it is asked on the page and in the workbook: those that most jobs wait for first, from 1.</summary>
    public required int Order { get; init; }

    /// <summary>Its name for people.</summary>
    public required string Title { get; init; }

    /// <summary>What may be written into the answer column of the file.</summary>
    public required string Answers { get; init; }

    /// <summary>What to answer on the page.</summary>
    public required string Help { get; init; }

    /// <summary>The column that was typed.</summary>
    public required string Typed { get; init; }

    /// <summary>Columns that help to answer.</summary>
    public required IReadOnlyList<string> About { get; init; }

    /// <summary>The key of a row as one string.</summary>
    public string Name(Func<string, string?> cell) => string.Join('\u001f', Identity.Select(cell));
}
