namespace PartsSignal.Pipeline.Review;

/// <summary>One review list: where its rows come from and what tells one row from another.</summary>
/// <param name="File">Its file name.</param>
/// <param name="Sql">Its query under <c>Sql/Review/</c>.</param>
/// <param name="Identity">Columns that name what is asked; a row answered earlier is not asked again.</param>
/// <param name="KnownKeys">Query under <c>Sql/Review/</c> of the keys that suggestions come from; null: no suggestions.</param>
/// <param name="Answers">What may be written into the answer column.</param>
internal sealed record ReviewList(string File, string Sql, IReadOnlyList<string> Identity, string? KnownKeys, string Answers)
{
    /// <summary>All lists.</summary>
    public static readonly IReadOnlyList<ReviewList> All =
    [
        new(ReviewNames.PartNumbers, "part_numbers", ["supplier", "typed_key"], "catalog_keys", "the right part number, or new if it is a part of its own"),
        new(ReviewNames.Complaints, "complaints", ["words"], null, "a complaint kind of complaint-words.csv; the words may be shortened to those that matter"),
        new(ReviewNames.Components, "components", ["description"], null, "a component of components.csv"),
        new(ReviewNames.Families, "families", ["learned_family"], null, "the family's right name; the same name says that it is right"),
        new(ReviewNames.Models, "models", ["model_key"], "model_keys", "the right model number of the model list, or a family"),
        new(ReviewNames.Serials, "serials", ["job_id"], null, "the build year or month: 2017 or 2017-04"),
        new(ReviewNames.Collisions, "collisions", ["fault_kind", "number"], null, "the part number, model number or family that is meant"),
    ];

    /// <summary>What names a row, as one text.</summary>
    public string Name(Func<string, string?> cell) => string.Join('\u001f', Identity.Select(cell));
}
