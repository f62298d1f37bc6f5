using System.Text.Json;
using System.Text.Json.Serialization;

namespace PartsSignal.EndToEnd.Tests.UnknownShops;

/// <summary>The right reading of a shop's files, as its truth.json gives it.</summary>
internal sealed record ShopTruth(IReadOnlyList<TableTruth> Files)
{
    private static readonly JsonSerializerOptions Options = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower };

    public static ShopTruth Load(string file) => JsonSerializer.Deserialize<ShopTruth>(File.ReadAllText(file), Options)!;
}

/// <param name="KindOk">Kinds that are right as well.</param>
/// <param name="Columns">Field to the headers that are right for it; a field that begins with + has no place in the store.</param>
/// <param name="Essential">Fields whose loss hurts.</param>
/// <param name="Forbidden">Header to the fields it must never fill.</param>
internal sealed record TableTruth(
    string File,
    string? Sheet,
    string Kind,
    IReadOnlyList<string> KindOk,
    IReadOnlyDictionary<string, IReadOnlyList<string>> Columns,
    IReadOnlyList<string> Essential,
    IReadOnlyDictionary<string, IReadOnlyList<string>> Forbidden)
{
    [JsonIgnore]
    public string Name => Sheet is null ? File : $"{File}, sheet {Sheet}";
}
