using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Vocabulary;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>Writes the month in five sentences: calls, first visits, causes, what rises and came back, and what is not known.</summary>
internal static class OpeningSentences
{
    // Up to so many calls are named one by one: a share of them would promise more than they can tell.
    private const int Few = 4;
    private const int Countable = 20;

    public static IReadOnlyList<string> Write(OpeningFacts facts) =>
        [Calls(facts), FirstVisits(facts), Causes(facts), RisingAndReturns(facts), NotKnown(facts)];

    private static string Calls(OpeningFacts facts)
    {
        string month = Format.Month(facts.Now.Month);
        string beside = Beside(facts, m => Format.Count(m.Calls));
        return facts.Now.Calls == 0
            ? $"No call of {month} is in the files{beside}."
            : $"In {month} the shop took {Counted(facts.Now.Calls, "call")}{beside}; {Format.Count(facts.Now.Closed)} of them {(facts.Now.Closed == 1 ? "was" : "were")} closed by {Format.Day(facts.AsOf)}{NotTold(facts.Now)}.";
    }

    private static string NotTold(MonthFacts month) => month.EndNotTold == 0 ? ""
        : $"; for {Format.Count(month.EndNotTold)}, the log does not say whether {(month.EndNotTold == 1 ? "it is" : "they are")} finished";

    private static string FirstVisits(OpeningFacts facts)
    {
        Estimate share = facts.Now.FirstVisitShare;
        string beside = Beside(facts, m => m.FirstVisitShare.Value is { } v ? Format.Percent(v) : null);
        return (facts.Now.VisitsKnown, share.Value) switch
        {
            (_, null) => $"How many were finished at the first visit is not known ({share.Missing}).",
            (1, { } one) => $"The one closed repair whose visits are recorded{NotCounted(facts.Now)} {(one > 0 ? "was" : "was not")} finished at the first visit{Beside(facts, FirstVisitCounts)}.",
            ( <= Few and var jobs, { } few) => $"Of {Counted(jobs, "closed repair")} whose visits are recorded{NotCounted(facts.Now)}, {Format.Count((long)Math.Round(few * jobs))} {(Math.Round(few * jobs) == 1 ? "was" : "were")} finished at the first visit{Beside(facts, FirstVisitCounts)}.",
            var (jobs, _) => $"Of {Counted(jobs, "closed repair")} whose visits are recorded{NotCounted(facts.Now)}, {Format.Share(share)} were finished at the first visit{beside}{Unripe(facts.Now)}.",
        };
    }

    private static string? FirstVisitCounts(MonthFacts month) => month.FirstVisitShare.Value is { } share
        ? $"{Format.Count((long)Math.Round(share * month.VisitsKnown))} of {Format.Count(month.VisitsKnown)}"
        : null;

    // So that nobody looks for the rest of the closed jobs, where there are few enough to be counted by hand.
    private static string NotCounted(MonthFacts month) => month.Closed <= Countable && month.Closed - month.VisitsKnown is > 0 and var others
        ? $" ({Format.Count(others)} more closed {(others == 1 ? "job does" : "jobs do")} not count: declined, not repaired, or visits not recorded)"
        : "";

    // Jobs that wait for a part close last, so a recent month looks better than it is.
    private static string Unripe(MonthFacts month) => month.StillOpen * 20 > month.Calls
        ? "; jobs still open mostly wait for a part, so the share will fall as they close"
        : "";

    private static string Causes(OpeningFacts facts)
    {
        if (facts.Now.CauseKnown == 0)
        {
            return "For no call of the month is the cause known yet.";
        }

        if (facts.Now.CauseKnown == 1)
        {
            return $"For one call the cause is known: {Format.Words(facts.Now.TopComponent ?? Need.NoPart)}.";
        }

        if (facts.Now.CauseKnown <= Few && facts.Needs.Count > 0)
        {
            return $"The cause of {Counted(facts.Now.CauseKnown, "call")} is known: {string.Join(", ", facts.Needs.Select(n => n.Calls == 1 ? Format.Words(n.Need) : $"{Format.Words(n.Need)} ({Format.Count(n.Calls)} calls)"))}.";
        }

        int first = facts.Needs.Count(n => n.Need is not (Need.NoPart or Need.OtherPart) && n.Calls == facts.Now.TopCalls);
        string top = (facts.Now.TopComponent, first) switch
        {
            (null, _) => "no part was named as the cause",
            (_, > 1) => $"no part leads: {first} parts were at fault in {Counted(facts.Now.TopCalls, "call")} each",
            ({ } component, _) => $"the part most often at fault was the {Format.Words(component)} with {Counted(facts.Now.TopCalls, "call")}, {Format.Share(facts.Now.TopShare)}",
        };
        string noPart = facts.Now.NoPartShare.Value is null
            ? $"how many needed no part is unknown ({facts.Now.NoPartShare.Missing})"
            : $"{Format.Share(facts.Now.NoPartShare)} needed no part{Beside(facts, m => m.NoPartShare.Value is { } v ? Format.Percent(v) : null)}";
        return $"Of {Counted(facts.Now.CauseKnown, "call")} whose cause is known, {top}; {noPart}.";
    }

    private static string RisingAndReturns(OpeningFacts facts)
    {
        string rising = facts.Rising switch
        {
            null => "Whether anything is rising was not computed",
            { Count: 0 } => "Nothing is clearly increasing",
            { Count: 1 } one => $"One thing is rising: {one[0]}",
            { Count: 2 } two => $"Two things are rising: {two[0]} and {two[1]}",
            { } more => $"{more.Count} things are rising, first {more[0]} and {more[1]}",
        };
        string back = facts.CameBack switch
        {
            null => "how many repairs came back is not known",
            { } month => $"of {Counted(month.Repairs, "repair")} closed in {Format.Month(month.Month)}, {Format.Count(month.CameBack)} came back within {facts.CallbackDays} days for the same complaint, {Format.Share(month.Share)}{Beside(ShareOf(facts.CameBackBefore), ShareOf(facts.CameBackYearAgo))}",
        };
        string batch = facts.Batches.Count switch
        {
            0 => "",
            1 => $"; one possible bad batch: {facts.Batches[0]}",
            var more => $"; {more} possible bad batches, the clearest: {facts.Batches[0]}",
        };
        return $"{rising}{batch}; {back}.";
    }

    private static string NotKnown(OpeningFacts facts)
    {
        MonthFacts now = facts.Now;
        var gaps = new List<string>();
        Add(gaps, now.StillOpen, now.Calls, "still open, so neither cause nor visits are known");
        Add(gaps, now.FamilyUnknown, now.Calls, "of no known model family");
        Add(gaps, now.AgeUnknown, now.Calls, "of unknown age");
        Add(gaps, now.ComplaintUnknown, now.Calls, "with a complaint in no table");
        string calls = gaps.Count == 0 ? "Of the month's calls nothing that this report uses is missing" : $"Not known: {string.Join("; ", gaps)}";
        string rows = facts.Read == 0
            ? "no rows were read"
            : $"over all files {Format.Count(facts.Rejected)} of {Format.Count(facts.Read)} rows could not be read";
        return $"{calls}; {rows}.";
    }

    private static void Add(List<string> gaps, long count, long of, string what)
    {
        if (count > 0)
        {
            gaps.Add($"{Format.Count(count)} of {Counted(of, "call")} {what}");
        }
    }

    private static string Counted(long count, string what) => $"{Format.Count(count)} {what}{(count == 1 ? "" : "s")}";

    private static string Beside(OpeningFacts facts, Func<MonthFacts, string?> figure) =>
        Beside(facts.Before is { } b ? figure(b) : null, facts.YearAgo is { } y ? figure(y) : null);

    private static string? ShareOf(ReturnMonth? month) => month?.Share.Value is { } share ? Format.Percent(share) : null;

    private static string Beside(string? before, string? yearAgo)
    {
        string[] parts = [.. new[] { before is null ? null : $"{before} the month before", yearAgo is null ? null : $"{yearAgo} a year earlier" }.OfType<string>()];
        return parts.Length == 0 ? "" : $" ({string.Join(", ", parts)})";
    }
}
