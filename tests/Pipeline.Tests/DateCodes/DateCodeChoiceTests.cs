using PartsSignal.Analysis.CrossReference;
using PartsSignal.Pipeline.DateCodes;

namespace PartsSignal.Pipeline.Tests.DateCodes;

public sealed class DateCodeChoiceTests
{
    private static readonly SerialDateRuleText Rule = new("Velq", "^(?<year>\\d{2})\\d{4}$", null, null, null, null);

    [Theory]
    [InlineData(DateCodeTrust.Proven, null, "proven", true)]
    [InlineData(DateCodeTrust.Asked, null, "asked", false)]
    [InlineData(DateCodeTrust.Proven, false, "rejected", false)]
    [InlineData(DateCodeTrust.Asked, true, "approved", true)]
    public void Decide_ACode_FollowsTheAnswerBeforeTheEvidence(object trust, bool? answer, string basis, bool inUse)
    {
        DateCodeRule rule = Assert.Single(DateCodeChoice.Decide([Learned("year in characters 1 to 2", (DateCodeTrust)trust)], answer is { } said ? [Said("year in characters 1 to 2", said)] : []));
        Assert.Equal((basis, inUse), (rule.Basis, rule.InUse));
        Assert.Equal(Rule, rule.ToText());
    }

    [Fact]
    public void Decide_ApprovedCodeThatTheFilesNoLongerShow_IsStillUsed()
    {
        DateCodeRule rule = Assert.Single(DateCodeChoice.Decide([], [Said("year in characters 1 to 2", true)]));
        Assert.Equal(("approved", true, 0), (rule.Basis, rule.InUse, rule.Confirming));
        Assert.Equal(Rule, rule.ToText());
        Assert.Empty(DateCodeChoice.Decide([], [Said("year in characters 1 to 2", false)]));
    }

    [Fact]
    public void Decide_AnotherCodeOfSerialsWhoseCodeWasApproved_IsOnlyAsked() =>
        Assert.Equal(
            ["asked", "approved"],
            DateCodeChoice.Decide([Learned("year in characters 3 to 4", DateCodeTrust.Proven)], [Said("year in characters 1 to 2", true)]).Select(r => r.Basis));

    [Fact]
    public void Decide_TwoAnswersAboutOneCode_TheLastHolds() =>
        Assert.Equal("rejected", Assert.Single(DateCodeChoice.Decide(
            [Learned("year in characters 1 to 2", DateCodeTrust.Proven)], [Said("year in characters 1 to 2", true), Said("year in characters 1 to 2", false)])).Basis);

    private static LearnedDateCode Learned(string code, DateCodeTrust trust) => new(Rule, "Velq", code, "999999", 40, 0, 1e-9, trust);

    private static DateCodeAnswer Said(string code, bool isRight) => new("Velq", "999999", code, isRight, Rule);
}
