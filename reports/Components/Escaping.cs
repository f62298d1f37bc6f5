namespace PartsSignal.Reports.Components;

/// <summary>Escapes text for markup.</summary>
internal static class Escaping
{
    private const char Replacement = '\uFFFD';

    /// <summary>Writes text so that a browser shows exactly these characters. Control characters that a document must not hold become U+FFFD.</summary>
    public static void WriteText(TextWriter writer, string text)
    {
        for (int i = 0; i < text.Length; i++)
        {
            char c = text[i];
            switch (c)
            {
                case '&': writer.Write("&amp;"); break;
                case '<': writer.Write("&lt;"); break;
                case '>': writer.Write("&gt;"); break;
                case '"': writer.Write("&quot;"); break;
                case '\'': writer.Write("&#39;"); break;
                case '\t' or '\n' or '\r': writer.Write(' '); break;
                case < ' ' or '\u007F' or '\uFFFE' or '\uFFFF': writer.Write(Replacement); break;
                default: i += WriteCharacter(writer, text, i); break;
            }
        }
    }

    private static int WriteCharacter(TextWriter writer, string text, int i)
    {
        if (!char.IsSurrogate(text[i]))
        {
            writer.Write(text[i]);
            return 0;
        }

        if (i + 1 < text.Length && char.IsSurrogatePair(text[i], text[i + 1]))
        {
            writer.Write(text[i]);
            writer.Write(text[i + 1]);
            return 1;
        }

        writer.Write(Replacement);
        return 0;
    }
}
