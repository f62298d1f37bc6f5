using PartsSignal.Analysis.CheckOrder;
using PartsSignal.Analysis.CrossReference;

namespace PartsSignal.Analysis.Prediction.Answers;

/// <summary>Everything an answer is put together from beside the model: parts, vans, models, checks, risks. Held in memory, asked by key.</summary>
public sealed class LookupFacts
{
    private const int ShortestBase = 4;
    private const int LongestVariant = 4;
    private readonly ILookup<(string, string), FamilyPart> _parts;
    private readonly Dictionary<(string, string), long> _modelJobs;
    private readonly ILookup<(string, string), Companion> _companions;
    private readonly ILookup<string, VanPart> _vans;
    private readonly ILookup<(string, string, string, int), YearRisk> _risks;
    private readonly Dictionary<string, KnownModel> _models;
    private readonly ILookup<string, KnownModel> _lookAlikes;
    private readonly Dictionary<string, KnownModel> _families;

    /// <summary>Indexes the facts.</summary>
    public LookupFacts(
        IEnumerable<(string Family, FamilyPart Part)> parts,
        IEnumerable<(string Model, string Part, long Jobs)> modelParts,
        IEnumerable<Companion> companions,
        IEnumerable<VanPart> vans,
        IReadOnlyCollection<KnownModel> models,
        CheckTable checks,
        IReadOnlyList<YearRisk> risks)
    {
        _parts = parts.ToLookup(p => (p.Family, p.Part.Component), p => p.Part);
        _modelJobs = modelParts.GroupBy(m => (m.Model, m.Part)).ToDictionary(g => g.Key, g => g.Sum(m => m.Jobs));
        _companions = companions.ToLookup(c => (c.ApplianceType, c.Component));
        _vans = vans.ToLookup(v => v.PartNumber, StringComparer.Ordinal);
        _models = models.GroupBy(m => CompactKey.From(m.ModelNumber), StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        _lookAlikes = models.ToLookup(m => CompactKey.Confusable(CompactKey.From(m.ModelNumber)), StringComparer.Ordinal);
        _families = models.GroupBy(m => CompactKey.From(m.ModelFamily), StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        _risks = risks.ToLookup(r => (r.Basis, r.ApplianceType, r.ModelFamily, r.AgeYears));
        Checks = checks;
        ApplianceTypes = [.. models.Select(m => m.ApplianceType).Concat(risks.Select(r => r.ApplianceType)).OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        Brands = [.. models.Select(m => m.Brand).OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
    }

    /// <summary>Indexes the rows of a store.</summary>
    public LookupFacts(StoreFacts rows, CheckTable checks)
        : this(rows.Parts, rows.ModelParts, rows.Companions, rows.Vans, rows.Models, checks, rows.Risks) => (Languages, OwnWords) = (rows.Languages, rows.OwnWords);

    /// <summary>Languages of the job logs; empty: not known.</summary>
    public IReadOnlyList<string> Languages { get; } = [];

    /// <summary>Frequent phrases of the shop's own that became complaint kinds.</summary>
    public IReadOnlyList<OwnComplaintWords> OwnWords { get; } = [];

    /// <summary>Brands of all models, in ordinal order.</summary>
    public IReadOnlyList<string> Brands { get; }

    /// <summary>Appliance types of the store, in ordinal order; those of the shop's own too.</summary>
    public IReadOnlyList<string> ApplianceTypes { get; }

    /// <summary>The shop's checks.</summary>
    public CheckTable Checks { get; }

    /// <summary>Parts of a component for a family, the most used first.</summary>
    public IEnumerable<FamilyPart> Parts(string? family, string component) => family is null ? [] : _parts[(family, component)];

    /// <summary>Jobs on the very model that used a part.</summary>
    public long JobsOnModel(string? model, string part) => model is null ? 0 : _modelJobs.GetValueOrDefault((model, part));

    /// <summary>What is often fitted together with a component.</summary>
    public IEnumerable<Companion> Companions(string applianceType, string component) => _companions[(applianceType, component)];

    /// <summary>Vans that hold a part.</summary>
    public IEnumerable<VanPart> Vans(string part) => _vans[part];

    /// <summary>
    /// Risks of the next year at an age: of the family, else of all families of the type; for a contract customer any
    /// failure, for others a return to this shop, whichever is known. Risks are told at whole years: the nearest is read.
    /// </summary>
    public IEnumerable<YearRisk> Risks(string applianceType, string? family, string customerKind, double age)
    {
        string[] bases = customerKind == "contract" ? ["register", "units_seen"] : ["units_seen", "register"];
        foreach (string basis in bases)
        {
            foreach (string group in (string[])[family ?? "all", "all"])
            {
                if (_risks.Contains((basis, applianceType, group, (int)Math.Round(age))))
                {
                    return _risks[(basis, applianceType, group, (int)Math.Round(age))];
                }
            }
        }

        return [];
    }

    /// <summary>
    /// The model a typed number means: letters and digits alone decide; if none, a number that differs only in
    /// characters that look alike, when exactly one does; if none, a family's own number or the one family whose models
    /// all begin with what was typed; if none, the one family whose models have the same base, for a variant that is new.
    /// </summary>
    /// <returns>The model, and how it was found: exact, look-alike, family, beginning, base. Null: unknown.</returns>
    public (KnownModel Model, string Basis)? Resolve(string? typed)
    {
        string key = CompactKey.From(typed);
        if (key.Length == 0)
        {
            return null;
        }

        if (_models.TryGetValue(key, out KnownModel? exact))
        {
            return (exact, "exact");
        }

        KnownModel[] alike = [.. _lookAlikes[CompactKey.Confusable(key)]];
        if (alike.Length == 1)
        {
            return (alike[0], "look-alike");
        }

        if (_families.TryGetValue(key, out KnownModel? family))
        {
            return (family with { ModelNumber = "" }, "family");
        }

        KnownModel[] begin = key.Length < 4 ? [] : [.. _models.Where(m => m.Key.StartsWith(key, StringComparison.Ordinal) || key.StartsWith(m.Key, StringComparison.Ordinal)).Select(m => m.Value)];
        return begin.Length == 0 ? SameBase(key)
            : begin.All(m => m.ModelFamily == begin[0].ModelFamily) ? (begin.OrderBy(m => m.ModelNumber, StringComparer.Ordinal).First() with { ModelNumber = "" }, "beginning")
            : null;
    }

    // A variant differs from its sisters in a few characters at the end.
    private (KnownModel Model, string Basis)? SameBase(string key)
    {
        for (int length = key.Length - 1; length >= Math.Max(ShortestBase, key.Length - LongestVariant); length--)
        {
            string start = key[..length];
            KnownModel[] sisters = [.. _models.Where(m => m.Key.StartsWith(start, StringComparison.Ordinal)).Select(m => m.Value)];
            if (sisters.Length > 0)
            {
                bool told = start.Any(char.IsAsciiDigit) && sisters.All(m => m.ModelFamily == sisters[0].ModelFamily);
                return told ? (sisters.OrderBy(m => m.ModelNumber, StringComparer.Ordinal).First() with { ModelNumber = "" }, "base") : null;
            }
        }

        return null;
    }
}
