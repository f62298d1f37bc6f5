using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.CrossReference;

/// <summary>A learned rule for date codes and whether it is used; a row of the store's table <c>date_codes</c>.</summary>
/// <param name="Brand">Brand as most often typed.</param>
/// <param name="SerialForm">Form of its serials: A for a letter, 9 for a digit.</param>
/// <param name="DateCode">Where the date stands, in words.</param>
/// <param name="Rule">The finding in one sentence.</param>
/// <param name="InUse">True if serials are read by it.</param>
/// <param name="Basis">Why, or why not: <c>proven</c>, <c>approved</c>, <c>asked</c>, <c>rejected</c>.</param>
/// <param name="Confirming">Appliances whose dates agree with it.</param>
/// <param name="Contradicting">Appliances whose dates do not.</param>
/// <param name="ConfirmingExamples">A few of them, everything but the code masked, or null if there are none.</param>
/// <param name="ContradictingExamples">The same, or null if there are none.</param>
/// <param name="JobsAged">Jobs of the brand whose age comes from a date code; 0 before the store is made.</param>
/// <param name="Pattern">The rule as a line of <c>serial-codes.csv</c>, from here on: see <see cref="SerialDateRuleText"/>.</param>
/// <param name="YearLetters">One symbol a year, or null for digits.</param>
/// <param name="YearOfFirst">Year of the first.</param>
/// <param name="CycleYears">They start again after so many years.</param>
/// <param name="MonthLetters">Twelve symbols, or null for digits.</param>
/// <param name="Weeks">How weeks are counted.</param>
public sealed record DateCodeRule(
    string Brand,
    string SerialForm,
    string DateCode,
    string Rule,
    bool InUse,
    string Basis,
    int Confirming,
    int Contradicting,
    string? ConfirmingExamples,
    string? ContradictingExamples,
    long JobsAged,
    string Pattern,
    string? YearLetters,
    string? YearOfFirst,
    string? CycleYears,
    string? MonthLetters,
    string? Weeks)
{
    /// <summary>The rules of a store; none in a store of a version that learned none.</summary>
    /// <param name="database">A session that sees the store.</param>
    public static IReadOnlyList<DateCodeRule> Read(Database database) => database.ReadTable<DateCodeRule>("date_codes");

    /// <summary>The rule as a line of the table of date codes.</summary>
    public SerialDateRuleText ToText() => new(Brand, Pattern, YearLetters, YearOfFirst, CycleYears, MonthLetters, Weeks);
}
