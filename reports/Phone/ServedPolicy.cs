using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Phone;

/// <summary>The content policy a server sends with every page of ours.</summary>
public static class ServedPolicy
{
    /// <summary>Nothing loads or runs but the style sheets and the one script of this assembly, each allowed by its hash.</summary>
    public static string Text { get; } =
        $"default-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'; img-src 'self' data:; style-src {Page.PolicyHash(StyleSheet.Report)} {Page.PolicyHash(StyleSheet.Answer)} {Page.PolicyHash(StyleSheet.Phone)}; script-src {Page.PolicyHash(LookupPage.Script)}";
}
