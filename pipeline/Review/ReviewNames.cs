namespace PartsSignal.Pipeline.Review;

/// <summary>File names of the review lists, the same in <c>out/review</c> and where they are handed in.</summary>
internal static class ReviewNames
{
    /// <summary>Typed part numbers that no catalogue number explains. Answer: the right number, <c>new</c>, or <c>ignore</c>.</summary>
    public const string PartNumbers = "review-part-numbers.csv";

    /// <summary>Complaints that no table word explains. Answer: a complaint kind; the words may be shortened.</summary>
    public const string Complaints = "review-complaints.csv";

    /// <summary>Part descriptions that tell no component. Answer: a component.</summary>
    public const string Components = "review-components.csv";

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
    public static readonly IReadOnlyList<string> All = [PartNumbers, Complaints, Components, Families, Models, Serials, Collisions];
}
