using System.Globalization;
using PartsSignal.Analysis.CrossReference;

namespace PartsSignal.Analysis.Tests.CrossReference;

/// <summary>Rules for date codes, learned from serials whose dates are known.</summary>
public sealed class DateCodeLearnerTests
{
    private const string Letters = "ABCDEFGHJKLMNPRSTVWX";
    private const string Months = "ABCDEFGHJKLM";
    private static readonly DateOnly First = new(2004, 1, 1);

    // Hand-worked: A stands for 2001, J for 2009, K for 2010; I, O, Q and U are left out; the first month is A.
    [Fact]
    public void Learn_LetterYearAndLetterMonth_FindsAlphabetCycleAndFirstYear()
    {
        LearnedDateCode code = Assert.Single(DateCodeLearner.Learn(Bought("Velq", 400, 1, d => $"{Letters[(d.Year - 2001) % 20]}{Months[d.Month - 1]}{{0}}", 6)));
        Assert.Equal(DateCodeTrust.Proven, code.Trust);
        Assert.Equal((400, 0, "year in character 1, month in character 2", "AA999999"), (code.Agree, code.Disagree, code.Code, code.Form));
        Assert.Equal(("20", "ABCDEFGHJKLM"), (code.Rule.CycleYears, code.Rule.MonthLetters));
        Assert.Equal("Velq writes its build date into serials of 8 characters (year in character 1, month in character 2): 400 serials with known dates agree, none disagrees.", code.Sentence);
        AssertReads(code, "KC123456", new(2010, 3, 1), new(2010, 3, 31));
        AssertReads(code, "RM123456", new(2015, 12, 1), new(2015, 12, 31));
    }

    [Fact]
    public void Learn_DigitYearAndWeek_ReadsTheWeekEitherWay()
    {
        LearnedDateCode code = Assert.Single(DateCodeLearner.Learn(Bought("Ombr", 200, 2, d => $"{d.Year % 100:00}{Math.Min(52, ((d.DayOfYear - 1) / 7) + 1):00}{{0}}", 5)));
        Assert.Equal((DateCodeTrust.Proven, "year in characters 1 to 2, week in characters 3 to 4", "either"), (code.Trust, code.Code, code.Rule.Weeks));
        AssertReads(code, "145210000", new(2014, 12, 22), new(2014, 12, 31));
    }

    // ISO weeks beside the calendar year: 1 January 2016 is written 1653, which is no week of 2016 in either count that holds for all.
    [Fact]
    public void Learn_IsoWeekBesideTheCalendarYear_ReadsTheStrayDaysToo()
    {
        LearnedDateCode code = Assert.Single(DateCodeLearner.Learn(
            [.. Bought("Ost", 300, 3, IsoWeek, 5), new DatedSerial("Ost", "165310001", null, new DateOnly(2016, 1, 20)), new DatedSerial("Ost", "175210002", null, new DateOnly(2017, 2, 2))]));
        Assert.Equal((DateCodeTrust.Proven, 0, "calendar"), (code.Trust, code.Disagree, code.Rule.Weeks));
        AssertReads(code, "165310001", new(2016, 1, 1), new(2016, 1, 3));
        Assert.Equal("2017-01-01/2017-01-01;2017-12-25/2017-12-31", BuildInterval.Write(Rule(code).Read("Ost", "175210002", new DateOnly(2060, 1, 1)).Candidates));
    }

    [Fact]
    public void Learn_OneDigitForTheYear_LeavesTheDecadeOpen()
    {
        LearnedDateCode code = Assert.Single(DateCodeLearner.Learn(Bought("Quil", 300, 4, d => $"{{0}}{d.Year % 10}{d.Month:00}", 4)));
        Assert.Equal((DateCodeTrust.Proven, "year in character 5, month in characters 6 to 7"), (code.Trust, code.Code));
        Assert.Contains("2015-03-01/2015-03-31", BuildInterval.Write(Rule(code).Read("Quil", "1234503", new DateOnly(2020, 1, 1)).Candidates)!);
        Assert.True(Rule(code).Read("Quil", "1234503", new DateOnly(2020, 1, 1)).Candidates.Count > 1);
    }

    [Fact]
    public void Learn_BuildDates_NeedFewerSerialsThanPurchaseDates()
    {
        DatedSerial[] bought = Bought("Zum", 30, 5, d => $"Z{{0}}{(char)('A' + d.Year - 2000)}{d.Month:00}", 3);
        DatedSerial[] built = Built("Zum", 30, 5, d => $"Z{{0}}{(char)('A' + d.Year - 2000)}{d.Month:00}", 3);
        Assert.Equal(DateCodeTrust.Proven, Assert.Single(DateCodeLearner.Learn(built)).Trust);
        Assert.DoesNotContain(DateCodeLearner.Learn(bought), c => c.Trust == DateCodeTrust.Proven);
    }

    [Fact]
    public void Learn_OneContradiction_IsAskedNotUsed()
    {
        DatedSerial[] told = Bought("Velq", 400, 1, d => $"{Letters[(d.Year - 2001) % 20]}{Months[d.Month - 1]}{{0}}", 6);
        told[7] = told[7] with { StartedOn = told[7].StartedOn!.Value.AddYears(-9) };
        LearnedDateCode code = Assert.Single(DateCodeLearner.Learn(told));
        Assert.Equal((DateCodeTrust.Asked, 399, 1), (code.Trust, code.Agree, code.Disagree));
        Assert.EndsWith("399 serials with known dates agree, 1 disagrees.", code.Sentence);
    }

    // Digits 3 and 4 run to 99: read as weeks they would name weeks 54 to 99.
    [Fact]
    public void Learn_DigitsThatAreNoWeeks_AreNotReadAsWeeks()
    {
        var chance = new Random(6);
        LearnedDateCode code = Assert.Single(DateCodeLearner.Learn(Bought("Garn", 200, 6, d => $"{d.Year % 100:00}{chance.Next(100):00}{{0}}", 4)));
        Assert.Equal("year in characters 1 to 2", code.Code);
        Assert.Null(Rule(code).Read("Garn", "1799", new DateOnly(2020, 1, 1)).Written);
    }

    // A plant number from 1 to 12 that has nothing to do with the month.
    [Fact]
    public void Learn_PlantNumbersThatLookLikeMonths_AreNotMonths()
    {
        var chance = new Random(7);
        Assert.Equal("year in characters 1 to 2", Assert.Single(DateCodeLearner.Learn(Bought("Garn", 300, 7, d => $"{d.Year % 100:00}{1 + chance.Next(12):00}{{0}}", 4))).Code);
    }

    [Fact]
    public void Learn_ALetterThatMovesOnOnceAYear_IsOnlyAsked() =>
        Assert.All(DateCodeLearner.Learn(Bought("Rev", 300, 8, d => $"{(char)('A' + d.Year - 2002)}{{0}}", 6)), c => Assert.Equal(DateCodeTrust.Asked, c.Trust));

    [Fact]
    public void Learn_RandomSerials_GiveNoRule()
    {
        string[] forms = ["00000000", "A0000000", "AA000000", "0000A000", "A0A0A0A0", "AAAA", "000000", "A00A00000"];
        for (int seed = 0; seed < 40; seed++)
        {
            var chance = new Random(100 + seed);
            DatedSerial[] told = [.. forms.SelectMany((f, i) => Enumerable.Range(0, 12 << chance.Next(6)).Select(_ => Dated($"B{i}", Fill(f, chance), chance, seed % 2 == 0)))];
            Assert.Empty(DateCodeLearner.Learn(told.DistinctBy(t => (t.Brand, t.Serial))));
        }
    }

    // Counters grow with time without telling it.
    [Fact]
    public void Learn_CountersThatGrowWithTime_GiveNoRuleThatIsUsed()
    {
        for (int seed = 0; seed < 40; seed++)
        {
            var chance = new Random(500 + seed);
            double perDay = 1 + (chance.NextDouble() * 300), start = chance.Next(5_000_000);
            DatedSerial[] told = [.. Enumerable.Range(0, 400).Select(_ =>
            {
                DateOnly built = First.AddDays(chance.Next(7000));
                return new DatedSerial("Count", ((int)(start + (perDay * (built.DayNumber - First.DayNumber + chance.NextDouble())))).ToString("0000000", CultureInfo.InvariantCulture), null, built.AddDays(chance.Next(10, 500)));
            })];
            Assert.DoesNotContain(DateCodeLearner.Learn(told.DistinctBy(t => t.Serial)), c => c.Trust == DateCodeTrust.Proven);
        }
    }

    private static string IsoWeek(DateOnly d) => $"{d.Year % 100:00}{ISOWeek.GetWeekOfYear(d.ToDateTime(default)):00}{{0}}";

    private static DatedSerial[] Bought(string brand, int count, int seed, Func<DateOnly, string> write, int digits) => Make(brand, count, seed, write, digits, false);

    private static DatedSerial[] Built(string brand, int count, int seed, Func<DateOnly, string> write, int digits) => Make(brand, count, seed, write, digits, true);

    // Bought 10 to 500 days after it was built.
    private static DatedSerial[] Make(string brand, int count, int seed, Func<DateOnly, string> write, int digits, bool built)
    {
        var chance = new Random(seed);
        return [.. Enumerable.Range(0, count).Select(_ =>
        {
            DateOnly day = First.AddDays(chance.Next(7000));
            string serial = string.Format(CultureInfo.InvariantCulture, write(day), chance.Next((int)Math.Pow(10, digits)).ToString(new string('0', digits), CultureInfo.InvariantCulture));
            return new DatedSerial(brand, serial, built ? BuildInterval.Month(day.Year, day.Month) : null, built ? null : day.AddDays(chance.Next(10, 500)));
        })];
    }

    private static DatedSerial Dated(string brand, string serial, Random chance, bool built)
    {
        DateOnly day = First.AddDays(chance.Next(7000));
        return new DatedSerial(brand, serial, built ? BuildInterval.Month(day.Year, day.Month) : null, built ? null : day);
    }

    private static string Fill(string form, Random chance) => string.Concat(form.Select(c => c == '0' ? (char)('0' + chance.Next(10)) : (char)('A' + chance.Next(26))));

    private static SerialDateRules Rule(LearnedDateCode code)
    {
        SerialDateRule? rule = SerialDateRule.Create(code.Rule, out IReadOnlyList<string> faults);
        Assert.Empty(faults);
        return new SerialDateRules([rule!]);
    }

    private static void AssertReads(LearnedDateCode code, string serial, DateOnly from, DateOnly to) =>
        Assert.Equal($"{from:yyyy-MM-dd}/{to:yyyy-MM-dd}", BuildInterval.Write(Rule(code).Read(code.Brand, serial, new DateOnly(2024, 6, 1)).Candidates));
}
