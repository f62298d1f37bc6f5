using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Privacy;

namespace PartsSignal.Pipeline.Staging;

/// <summary>Name of a staged file's folder: it changes when anything changes that its rows depend on.</summary>
internal static class CacheKey
{
    // Raised whenever the same bytes and map would be staged otherwise than before.
    private const int Version = 20;

    /// <summary>The folder's name: 16 hex digits of the content, 16 of everything else.</summary>
    public static string Create(SourceFile source, string contentHash, ShopSettings settings, StagingTools tools, FileStyle? style)
    {
        var text = new StringBuilder();
        text.Append(Version).Append('\n').Append(source.File.Name).Append('\n').Append(source.OwnName).Append('\n').Append(source.Order).Append('\n')
            .Append(JsonSerializer.Serialize(source.Map)).Append('\n')
            .Append(settings.DateOrder).Append('\n').Append(settings.NumberStyle).Append('\n')
            .Append(settings.Limits).Append('\n').Append(style).Append('\n')
            .Append(FileWords.Version).Append('\n').Append(tools.Words.Fingerprint).Append('\n').Append(tools.SerialRules).Append('\n').Append(tools.Key.Fingerprint)
            .Append('\n').Append(tools.Forgotten.Fingerprint).Append('\n').Append(settings.Technicians);
        return contentHash[..16] + "-" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())))[..16];
    }
}
