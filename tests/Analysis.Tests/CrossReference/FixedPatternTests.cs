using System.Text.RegularExpressions;
using CsCheck;
using PartsSignal.Analysis.CrossReference;

namespace PartsSignal.Analysis.Tests.CrossReference;

/// <summary>Matching place by place says what the regular expression says, or declines.</summary>
public sealed class FixedPatternTests
{
    private const RegexOptions Options = RegexOptions.IgnoreCase | RegexOptions.CultureInvariant;

    private static readonly Gen<string> Piece = Gen.Select(One("\\d", "[A-C]", "[a-c3-5]", "[XY]", "A", "b", "7", "-", "/"), Gen.Int[1, 4])
        .Select(t => t.Item2 < 3 || t.Item1.Length == 1 ? t.Item1 : $"{t.Item1}{{{t.Item2}}}");

    private static readonly Gen<string> Patterns = Gen.Select(Piece.Array[0, 2], Piece.Array[1, 2], Piece.Array[0, 2], Piece.Array[1, 2])
        .Select(t => $"^{string.Concat(t.Item1)}(?<year>{string.Concat(t.Item2)}){string.Concat(t.Item3)}(?<week>{string.Concat(t.Item4)})$");

    private static Gen<string> One(params string[] choices) => Gen.Int[0, choices.Length - 1].Select(i => choices[i]);

    [Fact]
    public void IsMatch_RandomPatternAndText_AsTheRegularExpression() => Gen.Select(Patterns, Gen.Char["ABCQXY-/0123456789abc"].Array[0, 14].Select(c => new string(c))).ForAll(
        (pattern, text) =>
        {
            FixedPattern fixedPattern = FixedPattern.Parse(pattern)!;
            Match match = Regex.Match(text, pattern, Options);
            return match.Success == fixedPattern.IsMatch(text) && (!match.Success || Same(fixedPattern, match, text));
        },
        runs: 3000);

    [Fact]
    public void IsMatch_TextMadeToFit_Matches() => Gen.Select(Patterns, Gen.Int[0, 9]).ForAll(
        (pattern, digit) =>
        {
            string text = Filled(pattern, digit);
            FixedPattern fixedPattern = FixedPattern.Parse(pattern)!;
            return fixedPattern.IsMatch(text) && Same(fixedPattern, Regex.Match(text, pattern, Options), text);
        },
        runs: 1000);

    [Theory]
    [InlineData("^(?<year>[A-Z])")]
    [InlineData("(?<year>[A-Z])$")]
    [InlineData("^(?<year>[A-Z])+$")]
    [InlineData("^(?<year>[A-Z])|B$")]
    [InlineData("^(?<year>[^A-Z])$")]
    [InlineData("^(?<year>[A-Z]?)$")]
    [InlineData("^(?<year>\\w)$")]
    [InlineData("^(?<year>.)$")]
    [InlineData("^(?<year>\\d{2,4})$")]
    [InlineData("^(?:(?<year>\\d))$")]
    [InlineData("^(?<year>(?<week>\\d))$")]
    [InlineData("^(?<year>\\d\\$")]
    [InlineData("^(?<year>\\d)(?<year>\\d)$")]
    public void Of_PatternsOfAnotherKind_AreDeclined(string pattern) => Assert.Null(FixedPattern.Parse(pattern));

    [Fact]
    public void Knows_LettersBeyondAscii_AreLeftToTheRegularExpression() => Assert.False(FixedPattern.Knows("A\u0664"));

    private static bool Same(FixedPattern pattern, Match match, string text) =>
        text[pattern.Year!.Value] == match.Groups["year"].Value && text[pattern.Week!.Value] == match.Groups["week"].Value;

    // A character of each place's set.
    private static string Filled(string pattern, int digit) => Regex.Replace(
        Regex.Replace(pattern, @"\(\?<\w+>|[)^$]", ""),
        @"(\\d|\[[^\]]+\]|.)(?:\{(\d)\})?",
        m => string.Concat(Enumerable.Repeat(m.Groups[1].Value switch { "\\d" => digit.ToString(), ['[', char first, ..] => first.ToString(), string literal => literal }, m.Groups[2].Success ? m.Groups[2].Value[0] - '0' : 1)));
}
