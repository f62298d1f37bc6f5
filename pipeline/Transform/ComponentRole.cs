using CsvHelper;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Transform;

/// <summary>Whether a component is the main repair of a job or an accessory to another.</summary>
/// <param name="Component">The component.</param>
/// <param name="Role"><c>main</c> or <c>accessory</c>.</param>
internal sealed record ComponentRole(string Component, string Role)
{
    private const string FileName = "components.csv";

    /// <summary>Roles of the shop's own table of components, then of the shipped one.</summary>
    public static IReadOnlyList<ComponentRole> Load(string folder)
    {
        string own = Path.Combine(folder, FileName);
        IEnumerable<ComponentRole> all = Parse(WordTable.ReadDefault(FileName));
        return [.. (File.Exists(own) ? Parse(File.ReadAllText(own)).Concat(all) : all).DistinctBy(r => r.Component)];
    }

    private static List<ComponentRole> Parse(string text)
    {
        using var csv = CsvReader.FromText(text, new CsvReaderOptions { Separator = ',', TrimWhitespace = true });
        csv.ReadHeader();
        bool has = csv.TryGetFieldIndex("role", out int role);
        var roles = new List<ComponentRole>();
        while (csv.Read())
        {
            roles.Add(new ComponentRole(csv.GetString("component"), has && csv.GetString(role) == "accessory" ? "accessory" : "main"));
        }

        return roles;
    }
}
