namespace PartsSignal.Pipeline.Privacy;

/// <summary>What a piece that is cut out of a text was; the later ones say more.</summary>
internal enum CutKind : byte
{
    /// <summary>It stays.</summary>
    None,

    /// <summary>A word that nobody vouches for.</summary>
    Word,

    /// <summary>A number longer than an error code.</summary>
    Number,

    /// <summary>A name.</summary>
    Name,

    /// <summary>An address.</summary>
    Address,

    /// <summary>A phone number.</summary>
    Phone,

    /// <summary>A card number.</summary>
    Card,

    /// <summary>An e-mail address.</summary>
    Email,
}

/// <summary>Which characters of a text are cut out, and the text without them.</summary>
internal sealed class TextCuts(string text)
{
    private static readonly string[] Marks = ["", "[...]", "[number]", "[name]", "[address]", "[phone]", "[card]", "[e-mail]"];
    private byte[]? _kinds;

    /// <summary>True when nothing is cut.</summary>
    public bool IsNone => _kinds is null;

    /// <summary>The same cuts, for going on from here in two ways.</summary>
    public TextCuts Copy() => new(text) { _kinds = (byte[]?)_kinds?.Clone() };

    /// <summary>Cuts a stretch; where something is cut already, the kind that says more stays.</summary>
    public void Cut(int start, int end, CutKind kind)
    {
        _kinds ??= new byte[text.Length];
        for (int i = start; i < end; i++)
        {
            _kinds[i] = Math.Max(_kinds[i], (byte)kind);
        }
    }

    /// <summary>True where a character is cut.</summary>
    public bool IsCut(int at) => _kinds is not null && _kinds[at] != 0;

    /// <summary>The text with marks for what is cut; the same instance when nothing is.</summary>
    public string Apply()
    {
        if (_kinds is null)
        {
            return text;
        }

        var kept = new System.Text.StringBuilder(text.Length);
        for (int i = 0; i < text.Length;)
        {
            if (_kinds[i] == 0)
            {
                kept.Append(text[i++]);
                continue;
            }

            byte kind = _kinds[i];
            int end = i + 1;
            while (true)
            {
                while (end < text.Length && _kinds[end] != 0)
                {
                    kind = Math.Max(kind, _kinds[end++]);
                }

                // What stands between two cut pieces goes with them: blanks, commas, hyphens.
                int next = end;
                while (next < text.Length && next - end < 3 && _kinds[next] == 0 && !char.IsLetterOrDigit(text[next]) && text[next] is not ('[' or ']' or ';' or '\n'))
                {
                    next++;
                }

                if (next == end || next >= text.Length || _kinds[next] == 0)
                {
                    break;
                }

                end = next;
            }

            kept.Append(Marks[kind]);
            i = end;
        }

        return kept.ToString();
    }
}
