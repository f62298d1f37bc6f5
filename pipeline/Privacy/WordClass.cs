namespace PartsSignal.Pipeline.Privacy;

/// <summary>What a word may be beside names, numbers and streets; one word may be several.</summary>
[Flags]
internal enum WordClass : ushort
{
    /// <summary>None of these.</summary>
    None = 0,

    /// <summary>An article, preposition, pronoun or the like.</summary>
    Function = 1,

    /// <summary>An everyday word of the complaint reader.</summary>
    Common = 1 << 1,

    /// <summary>A word of the program's own tables.</summary>
    Own = 1 << 2,

    /// <summary>A form of address.</summary>
    Title = 1 << 3,

    /// <summary>The first word of what is said before a name: "ask for".</summary>
    Ask = 1 << 4,

    /// <summary>What may stand before a name: call, tel, customer; every role too.</summary>
    Call = 1 << 5,

    /// <summary>Who somebody is: tenant, neighbor, wife.</summary>
    Role = 1 << 6,

    /// <summary>What follows a name: says, wants.</summary>
    Says = 1 << 7,

    /// <summary>What stands before a secret number: lockbox, PIN.</summary>
    Secret = 1 << 8,

    /// <summary>What a code opens, where it stands before "code".</summary>
    Entrance = 1 << 9,

    /// <summary>A street word that follows the name.</summary>
    StreetAfter = 1 << 10,

    /// <summary>A street word that precedes the name.</summary>
    StreetBefore = 1 << 11,

    /// <summary>A word for a digit.</summary>
    Digit = 1 << 12,

    /// <summary>What follows a number that counts or measures.</summary>
    Unit = 1 << 13,

    /// <summary>An everyday word of the program's tables that says nothing about a machine: "lange", "gestern".</summary>
    Everyday = 1 << 14,

    /// <summary>What stands before the plate of a car.</summary>
    Plate = 1 << 15,
}

/// <summary>The classes of words by the hash of their folded form, so that one look tells all of them.</summary>
internal sealed class WordClassTable
{
    private readonly ulong[] _words;
    private readonly WordClass[] _classes;

    /// <summary>Joins sets of words.</summary>
    public WordClassTable(IReadOnlyList<(WordClass Class, HashSet<ulong> Words)> sets)
    {
        uint places = System.Numerics.BitOperations.RoundUpToPowerOf2((uint)(sets.Sum(s => s.Words.Count) * 2) + 16);
        (_words, _classes) = (new ulong[places], new WordClass[places]);
        foreach ((WordClass kind, HashSet<ulong> words) in sets)
        {
            foreach (ulong word in words)
            {
                int at = PlaceOf(word);
                (_words[at], _classes[at]) = (word, _classes[at] | kind);
            }
        }
    }

    /// <summary>The classes of a word.</summary>
    public WordClass Of(ulong word) => _classes[PlaceOf(word)];

    // The place that holds the word, or the free one where it would stand.
    private int PlaceOf(ulong word)
    {
        int at = (int)(word & (ulong)(_words.Length - 1));
        while (_words[at] != word && _classes[at] != WordClass.None)
        {
            at = (at + 1) & (_words.Length - 1);
        }

        return at;
    }
}
