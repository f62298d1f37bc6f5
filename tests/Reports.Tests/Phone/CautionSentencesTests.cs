using PartsSignal.Analysis.Vocabulary;
using PartsSignal.Reports.Phone;

namespace PartsSignal.Reports.Tests.Phone;

public sealed class CautionSentencesTests
{
    private static readonly string Checks = File.ReadAllText(Path.Combine(RepositoryFolder.Root, "pipeline", "Defaults", "checks.csv"));

    [Fact]
    public void Of_GeneralCautionsBehindParticularOnes_AreNotSaidTwice() => Assert.Equal(
        [
            "Unplug it or turn off the breaker, close both faucets, and prove it dead with a meter just tried on a live point.",
            "Heaters and hot water stay hot; water inside may be under pressure.",
            "Broken glass: gloves.",
            "Capacitors and microwave high-voltage parts hold a charge.",
            "Gas and sealed-system work only by those licensed for it.",
            "The maker's service sheet and local codes come before anything printed here.",
        ],
        CautionSentences.Of(
        [
            "Before you open it: unplug it or turn off the breaker, close both faucets, and prove it dead with a meter just tried on a live point",
            "Heaters and hot water stay hot; water inside may be under pressure.",
            "Unplug or switch off at the panel, then prove it dead with a meter you have just tried on a live point. Broken glass: gloves.",
            Safety.Caution,
        ]));

    [Fact]
    public void Of_ParticularCautionLeavesOutTheWater_StillSaysIt()
    {
        IReadOnlyList<string> said = CautionSentences.Of(["Before you open it: unplug it or turn off the breaker, close the gas shutoff on gas models, and prove it dead with a meter just tried on a live point", "Gas work belongs to a licensed gas technician.", Safety.Caution]);
        Assert.Contains("Shut off the water too, where there is any.", said);
        Assert.DoesNotContain(said, s => s.StartsWith("Before any cabinet", StringComparison.Ordinal));
        Assert.Single(said, s => s.Contains("licensed", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_Alone_GeneralCautionIsWhole() => Assert.Equal(Safety.Caution, string.Join(' ', CautionSentences.Of([Safety.Caution])));

    [Fact]
    public void Of_Microwave_KeepsThatItCanKill()
    {
        IReadOnlyList<string> said = CautionSentences.Of(["Before you open it: unplug it and keep the plug in sight, then discharge the high-voltage capacitor as the service sheet says", "The high-voltage side can kill long after it is unplugged.", Safety.Caution]);
        Assert.Contains("The high-voltage side can kill long after it is unplugged.", said);
        Assert.Contains(said, s => s.Contains("prove it dead", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_SentencesOfTheShopItself_AreAllKept() =>
        Assert.Equal(["Mind the dog.", "Mind the step."], CautionSentences.Of(["Mind the dog", "Mind the step.", "Mind the dog."]));

    // A sentence that nobody says any more has no place in the table.
    [Fact]
    public void Known_Sentences_StandInTheShippedChecksOrTheGeneralCaution()
    {
        string openings = File.ReadAllText(Path.Combine(RepositoryFolder.Root, "pipeline", "Defaults", "check-openings.csv"));
        Assert.All(CautionSentences.Known, s => Assert.True(
            Safety.Caution.Contains(s, StringComparison.Ordinal) || Checks.Contains(s, StringComparison.Ordinal) || openings.Contains(s, StringComparison.Ordinal)
                || Checks.Contains("Before you open it: " + char.ToLowerInvariant(s[0]) + s[1..^1], StringComparison.Ordinal),
            s));
    }
}
