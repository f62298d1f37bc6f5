using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>A series in words.</summary>
internal static class SeriesName
{
    private const string All = "all";

    /// <summary>For example: washer inlet valve, family K41.</summary>
    public static string Of(string type, string component, string family)
    {
        string what = component switch
        {
            All => $"all {Format.Words(type)} calls",
            "none" => $"{Format.Words(type)} calls that needed no part",
            _ => $"{Format.Words(type)} {Format.Words(component)}",
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
