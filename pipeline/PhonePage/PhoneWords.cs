using PartsSignal.Pipeline.Words;
using PartsSignal.Reports.Lookup;

namespace PartsSignal.Pipeline.PhonePage;

/// <summary>Kinds of complaint with the words they are found by.</summary>
internal static class PhoneWords
{
    private const string File = "complaint-words.csv";

    /// <summary>The kinds, in the order of the shop's own table and then the shipped one.</summary>
    public static IReadOnlyList<LookupKind> Kinds(string input)
    {
        string own = Path.Combine(input, File);
        IReadOnlyList<Phrase> phrases = WordTable.Read(
            WordTable.ReadDefault(File), System.IO.File.Exists(own) ? System.IO.File.ReadAllText(own) : null, "complaint_kind", File);
        return [.. phrases.GroupBy(p => p.Meaning).Select(g => new LookupKind(
            g.Key,
            g.Any(p => p.Types is null) ? [] : [.. g.SelectMany(p => p.Types!).Distinct().Order(StringComparer.Ordinal)],
            string.Join(' ', g.SelectMany(p => p.Stems).Concat(g.Key.Split('_')).Select(s => s.TrimEnd('*')).Distinct())))];
    }
}
