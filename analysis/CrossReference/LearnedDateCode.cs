using System.Globalization;

namespace PartsSignal.Analysis.CrossReference;

/// <summary>How sure a learned date code is.</summary>
public enum DateCodeTrust
{
    /// <summary>Enough serials confirm it and none contradicts it: it is used.</summary>
    Proven,

    /// <summary>Likely; a person has to say yes.</summary>
    Asked,
}

/// <summary>A date code that dated serials of a brand show.</summary>
/// <param name="Rule">The rule, as a line of the shop's table of date codes.</param>
/// <param name="Brand">Brand as most often typed.</param>
/// <param name="Code">Where the code stands, in words.</param>
/// <param name="Form">Form of its serials, separators left out: A for a letter, 9 for a digit.</param>
/// <param name="Agree">Serials of this form whose dates agree with it.</param>
/// <param name="Disagree">Serials of this form whose dates disagree, or whose code names no date.</param>
/// <param name="ExpectedFalseRules">Bound on the expected number of such rules among serials that tell no date.</param>
/// <param name="Trust">Whether it is used without a question.</param>
public sealed record LearnedDateCode(
    SerialDateRuleText Rule, string Brand, string Code, string Form, int Agree, int Disagree, double ExpectedFalseRules, DateCodeTrust Trust)
{
    /// <summary>A few serials that agree, everything but the code masked.</summary>
    public IReadOnlyList<string> Confirming { get; init; } = [];

    /// <summary>A few that disagree, masked likewise.</summary>
    public IReadOnlyList<string> Contradicting { get; init; } = [];

    /// <summary>The finding in one sentence.</summary>
    public string Sentence => string.Create(
        CultureInfo.InvariantCulture,
        $"{Brand} writes its build date into serials of {Form.Length} characters ({Code}): {Agree:N0} {(Agree == 1 ? "serial" : "serials")} with known dates {(Agree == 1 ? "agrees" : "agree")}, {(Disagree == 0 ? "none disagrees" : Disagree == 1 ? "1 disagrees" : $"{Disagree:N0} disagree")}.");
}
