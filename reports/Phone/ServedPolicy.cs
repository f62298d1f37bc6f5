using System.Security.Cryptography;
using System.Text;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Phone;

/// <summary>The content policy a server sends with every page of ours.</summary>
public static class ServedPolicy
{
    /// <summary>Nothing loads or runs but the style sheets and the one script that this assembly carries, told by their hashes.</summary>
    public static string Text { get; } =
        $"default-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'; img-src 'self' data:; style-src {Hash(Asset.Text("report.css"))} {Hash(Asset.Text("lookup.css"))}; script-src {Hash(LookupPage.Script)}";

    private static string Hash(string text) => $"'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)))}'";
}
