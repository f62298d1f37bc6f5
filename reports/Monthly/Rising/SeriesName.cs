using PartsSignal.Reports.Pages;

namespace PartsSignal.Reports.Monthly.Rising;

/// <summary>A series in words.</summary>
internal static class SeriesName
{
    private const string All = "all";

    /// <summary>For example: washer inlet valve, family K41.</summary>
    public static string Of(string type, string component, string family)
    {
        string what = component switch
        {
            All => $"all {Shown.Words(type)} calls",
            "none" => $"{Shown.Words(type)} calls that needed no part",
            _ => $"{Shown.Words(type)} {Shown.Words(component)}",
        };
        return family == All ? what : $"{what}, family {family}";
    }

    /// <summary>The same of <c>type / component / family</c>.</summary>
    public static string OfPath(string path)
    {
        string[] parts = path.Split(" / ");
        return parts.Length == 3 ? Of(parts[0], parts[1], parts[2]) : path;
    }
}
