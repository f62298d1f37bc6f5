namespace PartsSignal.Analysis.CrossReference;

/// <summary>
/// One line of the shop's table of serial date-code rules, as typed. Columns of the table: brand, pattern,
/// year_letters, year_of_first, cycle_years, month_letters, and, where it is there, weeks.
/// </summary>
/// <param name="Brand">Brand; empty or *: any.</param>
/// <param name="Pattern">Regular expression with groups year and month or week, tried on the serial as typed in upper case, then on its letters and digits alone.</param>
/// <param name="YearLetters">One symbol a year, for example ABCDEFGHJKLM; empty: digits.</param>
/// <param name="YearOfFirst">Year of the first letter, or first year in which digits were used; empty, for digits: 1970.</param>
/// <param name="CycleYears">The letters start again after so many years; empty: the length of the alphabet. Digits need none.</param>
/// <param name="MonthLetters">Twelve symbols; empty: digits.</param>
/// <param name="Weeks">How weeks are counted: iso (ISO 8601, Monday to Sunday) or january (seven days each from 1 January); empty: iso.</param>
public sealed record SerialDateRuleText(
    string? Brand, string? Pattern, string? YearLetters, string? YearOfFirst, string? CycleYears, string? MonthLetters, string? Weeks = null);
