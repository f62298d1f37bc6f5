using PartsSignal.Analysis.Vocabulary;

namespace PartsSignal.Pipeline.Words;

/// <summary>All tables of words, the shop's own before the shipped ones.</summary>
internal sealed record WordSets
{
    private const string ComplaintFile = "complaint-words.csv";
    private const string ComponentFile = "components.csv";
    private const string ApplianceFile = "appliance-words.csv";
    private const string OutcomeFile = "outcome-words.csv";
    private const string StatusFile = "status-words.csv";
    private const string ReasonFile = "reason-words.csv";

    /// <summary>Complaint text to kind.</summary>
    public required ComplaintWordTable Complaints { get; init; }

    /// <summary>Part description to component.</summary>
    public required ComponentClassifier Components { get; init; }

    /// <summary>Appliance words to type.</summary>
    public required ApplianceNames Appliances { get; init; }

    /// <summary>Outcome words to outcome.</summary>
    public required SynonymTable Outcomes { get; init; }

    /// <summary>Status words to <c>closed</c>, <c>open</c>, <c>waiting_for_part</c> or <c>canceled</c>.</summary>
    public required SynonymTable Statuses { get; init; }

    /// <summary>Words for what a visit was for to <c>failure</c>, <c>preventive</c>, <c>installation</c> or <c>inspection</c>.</summary>
    public required SynonymTable Reasons { get; init; }

    /// <summary>Changes when any table changes; part of the key of staged files.</summary>
    public required string Fingerprint { get; init; }

    /// <summary>The table for a field that is known by the words in its cells.</summary>
    public SynonymTable Of(string field) => field switch
    {
        "status" => Statuses,
        "visit_reason" => Reasons,
        _ => throw new ArgumentException($"No table of words for '{field}'.", nameof(field)),
    };

    /// <summary>The phrases of complaints: the shop's own table, then the shipped one.</summary>
    /// <param name="folder">Folder with the shop's own table.</param>
    public static IReadOnlyList<KeywordRule> ComplaintRules(string folder)
    {
        string own = Path.Combine(folder, ComplaintFile);
        return WordTable.Read(WordTable.ReadDefault(ComplaintFile), File.Exists(own) ? File.ReadAllText(own) : null, "complaint_kind", ComplaintFile);
    }

    /// <summary>Every complaint kind of the shop's own table and of the shipped one, once, in their order.</summary>
    /// <param name="folder">Folder with the shop's own table.</param>
    public static IReadOnlyList<string> ComplaintKinds(string folder) => [.. ComplaintRules(folder).Select(p => p.Meaning).Where(k => k != Need.OtherComplaint).Distinct(StringComparer.Ordinal)];

    /// <summary>Reads the tables.</summary>
    /// <param name="folder">Folder with the shop's own tables, by the names of the shipped ones, or null if none.</param>
    /// <param name="appliances">Further names of appliances with their types, or null for none; they come first.</param>
    public static WordSets Load(string? folder, IReadOnlyList<(string Name, string Type)>? appliances = null)
    {
        var texts = new List<string> { WordTable.ReadDefault("common-words.txt"), WordTable.ReadDefault("short-words.csv"), PartPhrase.Version, ApplianceNames.Version, Negations.Version };
        IReadOnlyList<KeywordRule> Read(string file, string meaning)
        {
            string shipped = WordTable.ReadDefault(file);
            string? path = folder is null ? null : Path.Combine(folder, file);
            string? own = path is not null && File.Exists(path) ? File.ReadAllText(path) : null;
            texts.Add(shipped);
            texts.Add(own ?? "");
            return WordTable.Read(shipped, own, meaning, file);
        }

        IReadOnlyList<KeywordRule> complaints = Read(ComplaintFile, "complaint_kind");
        IReadOnlyList<KeywordRule> components = Read(ComponentFile, "component");
        KeywordRule[] named = [.. (appliances ?? []).Select((a, i) => new KeywordRule(a.Type, null, Tokenizer.Folded(a.Name), i)).Concat(Read(ApplianceFile, "appliance_type"))];
        texts.AddRange((appliances ?? []).Select(a => a.Name + '=' + a.Type));
        IReadOnlyList<KeywordRule> outcomes = Read(OutcomeFile, "outcome");
        IReadOnlyList<KeywordRule> statuses = Read(StatusFile, "status");
        IReadOnlyList<KeywordRule> reasons = Read(ReasonFile, "visit_reason");
        return new WordSets
        {
            Complaints = new ComplaintWordTable(complaints),
            Components = new ComponentClassifier(components, ComponentRole.Accessories(folder)),
            Appliances = new ApplianceNames(named),
            Outcomes = new SynonymTable(outcomes),
            Statuses = new SynonymTable(statuses),
            // "Maintenance - repair": what failed counts.
            Reasons = new SynonymTable(reasons, first: "failure"),
            Fingerprint = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(string.Join('\0', texts))))[..16],
        };
    }
}
