namespace PartsSignal.Pipeline.Cleaning;

/// <summary>Letters without their accents.</summary>
internal static class PlainLetter
{
    private const string Accented = "àáâãäåāăąçćčďèéêëēęěìíîïīıñńňòóôõöøōőŕřśšşťțùúûüūůűýÿźżžłđðß";
    private const string Plain = "aaaaaaaaacccdeeeeeeeiiiiiinnnoooooooorrsssttuuuuuuuyyzzzldds";

    /// <summary>A small letter without its accent; any other character as it is.</summary>
    public static char Of(char c)
    {
        int at = c < 128 ? -1 : Accented.IndexOf(c, StringComparison.Ordinal);
        return at < 0 ? c : Plain[at];
    }

    /// <summary>A text in small letters without their accents.</summary>
    public static string Of(string text) => string.Concat(text.Select(Of));
}
