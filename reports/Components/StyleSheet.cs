namespace PartsSignal.Reports.Components;

/// <summary>The style sheets: rules that every page shares, followed by those of one kind of page. The phone page, which stands alone, has its own.</summary>
public static class StyleSheet
{
    /// <summary>Monthly reports and their index.</summary>
    public static string Report { get; } = Of("report.css");

    /// <summary>The page that asks about a call.</summary>
    public static string Answer { get; } = Of("answer.css");

    /// <summary>The phone page.</summary>
    internal static string Phone { get; } = Asset.Text("lookup.css");

    /// <summary>Pages that show answers beside much else.</summary>
    /// <param name="own">Further rules of these pages.</param>
    public static string With(string own) => Answer + own;

    private static string Of(string own) => Asset.Text("shared.css") + Asset.Text(own);
}
