using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Transform;

/// <summary>What a description of a part says, beyond the tables of components.</summary>
/// <param name="Description">Lower case, trimmed.</param>
/// <param name="OwnComponent">Its words as a component of the shop's own, or null where they are no name.</param>
/// <param name="LikelyComponent">The component of the tables that it most likely means, or null if none.</param>
/// <param name="Role"><c>accessory</c> for mounting hardware, covers and consumables, <c>charge</c> for work, travel and fees, which are no parts, else <c>main</c>.</param>
internal sealed record PartName(string Description, string? OwnComponent, string? LikelyComponent, string Role);

/// <summary>Names the components that a shop's descriptions tell and the tables do not know.</summary>
internal static class PartNames
{
    /// <summary>Writes the table <c>part_names</c>, a row for each description of the staged files.</summary>
    public static void Attach(Database database, ComponentClassifier components)
    {
        IReadOnlyList<Described> all = database.Read<Described>("queries/session/described_parts.sql");
        // Descriptions that differ only in numbers, sizes or the order of words are one component, under its commonest name.
        var names = all.Select(d => (d.Description, d.Times, Phrase: PartPhrase.Parse(d.Description)))
            .Select(d => (d.Description, d.Times, d.Phrase, d.Phrase.Name, Key: string.Join(' ', d.Phrase.Telling.Order(StringComparer.Ordinal))))
            .ToList();
        Dictionary<string, string> usual = names.Where(n => n.Name is not null)
            .GroupBy(n => n.Key, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.GroupBy(n => n.Name!, StringComparer.Ordinal).OrderByDescending(n => n.Sum(d => d.Times)).ThenBy(n => n.Key, StringComparer.Ordinal).First().Key, StringComparer.Ordinal);
        ResultTable.Write(database, "part_names", names.Select(n => ChargeWords.IsCharge(n.Description)
            ? new PartName(n.Description, null, null, "charge")
            : new PartName(n.Description, n.Name is null ? null : usual[n.Key], components.LikelyComponent(n.Description), n.Phrase.IsAccessory ? "accessory" : "main")));
    }

    private sealed record Described(string Description, long Times);
}
