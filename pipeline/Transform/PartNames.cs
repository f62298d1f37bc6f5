using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Transform;

/// <summary>What a description of a part says, beyond the tables of components.</summary>
/// <param name="Description">Lower case, trimmed.</param>
/// <param name="OwnComponent">Its words as a component of the shop's own, or null where they are no name.</param>
/// <param name="LikelyComponent">The component of the tables that it most likely means, or null if none.</param>
/// <param name="SaysMore">False where the words only name a component of the tables.</param>
/// <param name="Role"><c>accessory</c> for mounting hardware, covers and consumables, <c>charge</c> for work, travel and fees, which are no parts, else <c>main</c>.</param>
internal sealed record PartName(string Description, string? OwnComponent, string? LikelyComponent, bool SaysMore, string Role);

/// <summary>Names the components that a shop's descriptions tell and the tables do not know.</summary>
internal static class PartNames
{
    /// <summary>Writes the table <c>part_names</c>, a row for each description of the staged files.</summary>
    public static void Attach(Database database, ComponentClassifier components)
    {
        var names = new OwnPartNames(
            [.. database.Read<DescribedPart>("queries/session/described_parts.sql")],
            [.. database.Read<BrandWord>("queries/session/brand_words.sql").Select(b => b.Brand)]);
        ResultTable.Write(database, "part_names", names.All.Select(n => ChargeWords.IsCharge(n.Description)
            ? new PartName(n.Description, null, null, true, "charge")
            : new PartName(n.Description, n.Name, components.Component(n.Meant) ?? components.LikelyComponent(n.Meant), components.SaysMore(n.Description), n.IsAccessory ? "accessory" : "main")));
    }

    private sealed record BrandWord(string Brand);
}
