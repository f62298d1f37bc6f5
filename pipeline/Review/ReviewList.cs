namespace PartsSignal.Pipeline.Review;

/// <summary>File names of the review lists, the same in <c>out/review</c> and in the input folder.</summary>
internal static class ReviewNames
{
    /// <summary>Typed part numbers that no catalogue number explains. Answer: the right number, <c>new</c>, or <c>ignore</c>.</summary>
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

    /// <summary>Numbers that mean two things. Answer: the part number, model number or family meant.</summary>
    public const string Collisions = "review-collisions.csv";

    /// <summary>Contradictions in the data, for reading only.</summary>
    public const string DataFaults = "data-faults.csv";

    /// <summary>All that are answered. Every one of them takes <c>ignore</c>.</summary>
    public static readonly IReadOnlyList<string> All = [PartNumbers, Complaints, Components, Appliances, Outcomes, Families, Models, Serials, Collisions];
}

/// <summary>A review list: the source of its rows and the key of a row.</summary>
/// <param name="File">Its file name.</param>
/// <param name="Sql">Name of its query.</param>
/// <param name="Identity">Key columns of a row; an answered row is not asked again.</param>
/// <param name="KnownKeys">Query for the keys to suggest from, or null for no suggestions.</param>
/// <param name="Answers">What may be written into the answer column.</param>
internal sealed record ReviewList(string File, string Sql, IReadOnlyList<string> Identity, string? KnownKeys, string Answers)
{
    /// <summary>All lists.</summary>
    public static readonly IReadOnlyList<ReviewList> All =
    [
        new(ReviewNames.PartNumbers, "part_numbers", ["supplier", "typed_key"], "catalog_keys", "the right part number, or new if it is a different part"),
        new(ReviewNames.Complaints, "complaints", ["words"], null, "a complaint kind, as listed below; you may shorten the words"),
        new(ReviewNames.Components, "components", ["description"], null, "a component, as listed below"),
        new(ReviewNames.Appliances, "appliances", ["appliance_type"], null, "the appliance type that it is another name for; leave it blank to count it separately"),
        new(ReviewNames.Outcomes, "outcomes", ["outcome_word"], null, "what it means, an outcome as listed below; until you answer, a job with a part on it counts as repaired, any other as unknown"),
        new(ReviewNames.Families, "families", ["learned_family"], null, "the right name of the family; repeat the name if it is right"),
        new(ReviewNames.Models, "models", ["model_key"], "model_keys", "the right model number from the model list, or a family"),
        new(ReviewNames.Serials, "serials", ["job_id"], null, "the build year or month: 2017 or 2017-04"),
        new(ReviewNames.Collisions, "collisions", ["fault_kind", "number"], null, "the part number, model number or family it means"),
    ];

    /// <summary>The key of a row as one string.</summary>
    public string Name(Func<string, string?> cell) => string.Join('\u001f', Identity.Select(cell));
}
