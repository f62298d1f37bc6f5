using CsvHelper;

namespace PartsSignal.Pipeline.Words;

/// <summary>Whether a component is the main repair of a job or an accessory to another, and the appliances that have it.</summary>
/// <param name="Component">The component.</param>
/// <param name="Role"><c>main</c> or <c>accessory</c>.</param>
/// <param name="Types">Appliance types that have it, <c>washer|dryer</c>, or null for all.</param>
internal sealed record ComponentRole(string Component, string Role, string? Types = null)
{
    private const string FileName = "components.csv";
    private const string AccessoryRole = "accessory";

    /// <summary>Roles of the shop's own table of components, then of the shipped one.</summary>
    /// <param name="folder">Folder with the shop's own table, or null if none.</param>
    public static IReadOnlyList<ComponentRole> Load(string? folder)
    {
        string? own = folder is null ? null : Path.Combine(folder, FileName);
        IEnumerable<ComponentRole> all = Parse(WordTable.ReadDefault(FileName));
        return [.. (own is not null && File.Exists(own) ? Parse(File.ReadAllText(own)).Concat(all) : all).DistinctBy(r => r.Component)];
    }

    /// <summary>Components that go with others.</summary>
    public static IReadOnlySet<string> Accessories(string? folder) => Load(folder).Where(r => r.Role == AccessoryRole).Select(r => r.Component).ToHashSet(StringComparer.Ordinal);

    private static List<ComponentRole> Parse(string text)
    {
        using var csv = CsvReader.FromText(text, new CsvReaderOptions { Separator = ',', TrimWhitespace = true });
        csv.ReadHeader();
        bool hasRole = csv.TryGetFieldIndex("role", out int role);
        bool hasTypes = csv.TryGetFieldIndex("appliance_types", out int types);
        var roles = new List<ComponentRole>();
        while (csv.Read())
        {
            string scope = hasTypes ? csv.GetString(types) : "";
            roles.Add(new ComponentRole(csv.GetString("component"), hasRole && csv.GetString(role) == AccessoryRole ? AccessoryRole : "main", scope is "" or "*" ? null : scope));
        }

        return roles;
    }
}
