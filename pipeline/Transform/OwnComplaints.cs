using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Vocabulary;
using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Transform;

/// <summary>Makes complaint kinds of what a shop's customers often say and the tables cannot read.</summary>
internal static class OwnComplaints
{
    /// <summary>
    /// Writes the tables <c>own_phrases</c>, a row for each phrase that became a kind, and <c>own_complaint_texts</c>, a
    /// row for each unread complaint that says one.
    /// </summary>
    public static void Attach(Database database)
    {
        IReadOnlyList<Unread> unread = database.Read<Unread>("queries/session/unread_complaints.sql");
        long calls = unread.Count == 0 ? 0 : database.Read<long>("queries/session/told_complaints.sql")[0];
        var negations = Negations.For(null);
        IReadOnlyList<OwnPhrase> phrases = OwnPhrases.Find([.. unread.Select(u => (u.Words, u.Times))], calls, w => PersonalWords.Function.Contains(WordList.Hash(w)), negations);
        // The phrases are the shop's commonest words as they are written, so no other word is taken for a slip of one.
        var table = new ComplaintWordTable(phrases.Select((p, i) => new KeywordRule(p.Kind, null, Tokenizer.Folded(p.Words), i)), isWord: _ => true);
        ResultTable.Write(database, "own_phrases", phrases.Select(p => new PhraseRow(p.Kind, p.Words)));
        ResultTable.Write(database, "own_complaint_texts", unread
            .Select(u => new TextRow(u.Words, table.Kind(u.Words, null)))
            .Where(t => t.ComplaintKind is not (Need.OtherComplaint or Need.NoComplaint)));
        database.Run("staging/own_kinds.sql");
    }

    private sealed record Unread(string Words, long Times);

    private sealed record PhraseRow(string ComplaintKind, string Words);

    private sealed record TextRow(string Words, string ComplaintKind);
}
