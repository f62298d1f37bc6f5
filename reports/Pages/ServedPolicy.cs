using System.Security.Cryptography;
using System.Text;

namespace PartsSignal.Reports.Pages;

/// <summary>The content policy a server sends with every page of ours.</summary>
public static class ServedPolicy
{
    /// <summary>Nothing loads or runs but the style sheets and the one script that this assembly carries, told by their hashes.</summary>
    public static string Text { get; } =
        $"default-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'; img-src 'self' data:; style-src {Hash("report.css")} {Hash("lookup.css")}; script-src {Hash("lookup.js")}";

    private static string Hash(string asset) => $"'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(Asset.Text(asset))))}'";
}
