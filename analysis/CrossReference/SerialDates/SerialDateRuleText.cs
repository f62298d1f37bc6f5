namespace PartsSignal.Analysis.CrossReference.SerialDates;

/// <summary>
/// One line of the shop's table of serial date-code rules, as typed. Columns of the table: brand, pattern,
/// year_alphabet, first_year, cycle_years, month_alphabet.
/// </summary>
/// <param name="Brand">Brand; empty or *: any.</param>
/// <param name="Pattern">Regular expression over the serial's letters and digits with groups year and month or week.</param>
/// <param name="YearAlphabet">One symbol a year, for example ABCDEFGHJKLM; empty: digits.</param>
/// <param name="FirstYear">Year of the first symbol, or first year in which digits were used.</param>
/// <param name="CycleYears">The letters start again after so many years; empty: the length of the alphabet. Digits need none.</param>
/// <param name="MonthAlphabet">Twelve symbols; empty: digits.</param>
public sealed record SerialDateRuleText(
    string? Brand, string? Pattern, string? YearAlphabet, string? FirstYear, string? CycleYears, string? MonthAlphabet);
