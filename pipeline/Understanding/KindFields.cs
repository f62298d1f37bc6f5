using PartsSignal.Pipeline.Config;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>Names of the fields of each kind, made once.</summary>
internal static class KindFields
{
    private static readonly Dictionary<string, IReadOnlyList<string>> ByKind = FieldCatalog.Kinds.ToDictionary(k => k, k => FieldCatalog.Names(k)!, StringComparer.Ordinal);

    /// <summary>Fields of a kind.</summary>
    public static IReadOnlyList<string> Of(string kind) => ByKind[kind];
}
