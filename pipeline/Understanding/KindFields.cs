using PartsSignal.Pipeline.Config;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>Names of the fields of each kind that are found by fitted weights, made once.</summary>
internal static class KindFields
{
    private static readonly Dictionary<string, IReadOnlyList<string>> ByKind = FieldCatalog.Kinds.ToDictionary(k => k, k => (IReadOnlyList<string>)[.. FieldCatalog.Of(k).Where(f => f.Found == Found.ByWeights).Select(f => f.Name)], StringComparer.Ordinal);

    /// <summary>Fields of a kind.</summary>
    public static IReadOnlyList<string> Of(string kind) => ByKind[kind];
}
