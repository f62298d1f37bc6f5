using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.CrossReference;

/// <summary>
/// Learns how brands write the build date into their serials from serials whose dates are known some other way. For each
/// form of a brand's serials every plausible code is tried: which characters, which alphabet, which cycle, month or week.
/// The likeliest is kept if no rival comes near and a code that has nothing to do with dates would hardly ever fit as well. It
/// is used when no serial contradicts it, and asked about otherwise.
/// </summary>
/// <remarks>
/// That chance is a permutation argument: the share p of all pairs of one serial's code and another's date that fit is what
/// a code without a date would reach, and k of n fits have the binomial tail P(X >= k). Times the number of codes tried over
/// all brands it bounds the expected number of false rules (Bonferroni). Year and month or week must each pass it, the month
/// or week among serials of the same year code.
/// </remarks>
public static class DateCodeLearner
{
    /// <summary>Expected false rules per shop, at most, for a rule to be used without a question.</summary>
    public const double UseBelow = 0.001;

    /// <summary>The same for asking about it.</summary>
    public const double AskBelow = 0.05;

    private const int FewestSerials = 8;
    private const int MostSerials = 1500;
    private const int ShortestSerial = 4;
    private const int LongestSerial = 20;
    private const int FewestFixed = 20;
    private const int MostYearCodes = 8;
    private const int MostExamples = 2;
    private const double LeastAgreeing = 0.95;

    // Log odds by which a code must beat every other that reads some serials differently: a thousand to one.
    private const double LeastLead = 6.9;
    private const double OtherReading = 0.01;
    private static readonly int[] Stocks = [365, 730, DateEvidence.MostDaysInStock];

    /// <summary>Learns from dated serials.</summary>
    /// <param name="told">The serials, each once. Brands are told apart by letters and digits alone.</param>
    /// <returns>At most one code a form of serial, by brand and length.</returns>
    public static IReadOnlyList<LearnedDateCode> Learn(IEnumerable<DatedSerial> told)
    {
        var groups = told
            .Where(t => t.Brand.Length > 0 && t.Serial.Length is >= ShortestSerial and <= LongestSerial && (t.Built is not null || t.StartedOn is not null))
            .GroupBy(t => (Brand: CompactKey.From(t.Brand), Form: Form(t.Serial)))
            .Where(g => g.Count() >= FewestSerials && g.Key.Brand.Length > 0)
            .OrderBy(g => g.Key.Brand, StringComparer.Ordinal).ThenBy(g => g.Key.Form.Length).ThenBy(g => g.Key.Form, StringComparer.Ordinal)
            .Select(g => new FormSearch([.. g.OrderBy(t => t.Serial, StringComparer.Ordinal)]))
            .ToList();
        List<IReadOnlyList<Fit>> best = [.. groups.Select(g => g.Best())];
        long tried = groups.Sum(g => g.Tried);
        return [.. groups.Zip(best).Select(g => g.Second.Select(fit => g.First.Judge(fit, tried)).OfType<LearnedDateCode>().OrderBy(c => c.Trust).FirstOrDefault()).OfType<LearnedDateCode>()];
    }

    // Letters and digits by place: serials of other forms follow other rules.
    private static string Form(string serial) => string.Concat(serial.Select(c => char.IsAsciiDigit(c) ? '9' : 'A'));

    /// <param name="Tail">Chance that a code without a date fits as well; times the codes tried, the expected false rules.</param>
    /// <param name="Lead">Log odds against the next best reading.</param>
    private sealed record Fit(DateCode Code, double Tail, double Lead);

    private sealed class FormSearch
    {
        private readonly DatedSerial[] _all;
        private readonly DateEvidence[] _told;
        private readonly int _length;
        private readonly int _from;
        private readonly int _to;
        private readonly double[] _background;

        public FormSearch(DatedSerial[] all)
        {
            _all = all;
            _length = all[0].Serial.Length;
            int step = ((all.Length - 1) / MostSerials) + 1;
            _told = [.. all.Where((_, i) => i % step == 0).Select(t => new DateEvidence(t))];
            (_from, _to) = (_told.Min(t => t.FirstYear), _told.Max(t => t.LastYear));
            _background = [.. Enumerable.Range(0, _length).Select(Background)];
        }

        public long Tried { get; private set; }

        /// <summary>The likeliest code; behind it the same code without its month or week, in case only the year can be proven.</summary>
        public IReadOnlyList<Fit> Best()
        {
            var search = new YearCodeSearch(_told);
            var plausible = search.Find().Select(y => Weigh(new DateCode(y, PeriodCode.None))).OfType<Weighed>().OrderByDescending(w => w.Score).Take(MostYearCodes).ToList();
            Tried += search.Tried;
            List<Weighed> all = [.. plausible];
            foreach (YearCode year in plausible.Select(w => w.Code.Year))
            {
                foreach (PeriodCode period in Periods(year))
                {
                    Tried += Stocks.Length;
                    if (Weigh(new DateCode(year, period)) is { } weighed)
                    {
                        all.Add(weighed);
                    }
                }
            }

            Weighed? best = all.MaxBy(w => w.Score);
            return best is null ? [] : [.. all.Where(w => w == best || (w.Code.Year == best.Code.Year && w.Code.Period == PeriodCode.None)).OrderByDescending(w => w == best).Select(w => Compare(w, all))];
        }

        public LearnedDateCode? Judge(Fit fit, long tried)
        {
            double chance = fit.Tail * tried;
            if (chance > AskBelow || fit.Lead < LeastLead)
            {
                return null;
            }

            DateCode code = fit.Code;
            DateEvidence[] all = [.. _all.Select(t => new DateEvidence(t))];
            int disagree = Disagree(code, all);
            if (code.Period.Kind == WithinYear.Week && disagree > 0)
            {
                DateCode calendar = code with { Period = code.Period with { Kind = WithinYear.CalendarWeek } };
                int other = Disagree(calendar, all);
                (code, disagree) = other < disagree ? (calendar, other) : (code, disagree);
            }

            if (disagree > (1 - LeastAgreeing) * all.Length)
            {
                return null;
            }

            // One letter or digit a year and nothing else may be a counter that moves on about once a year.
            bool proven = disagree == 0 && chance <= UseBelow && (code.Period.Kind != WithinYear.None || code.Year.IsAbsolute);
            string brand = _all.CountBy(t => t.Brand.Trim(), StringComparer.Ordinal).OrderByDescending(b => b.Value).ThenBy(b => b.Key, StringComparer.Ordinal).First().Key;
            return new LearnedDateCode(Rule(code, brand, all), brand, code.ToString(), Form(_all[0].Serial), all.Length - disagree, disagree, chance, proven ? DateCodeTrust.Proven : DateCodeTrust.Asked)
            {
                Confirming = Examples(code, all, agreeing: true),
                Contradicting = disagree == 0 ? [] : Examples(code, all, agreeing: false),
            };
        }

        private Fit Compare(Weighed weighed, IEnumerable<Weighed> all)
        {
            DateCode code = weighed.Code;
            double rival = all.Where(w => w != weighed && Differs(w.Code, code)).Select(w => w.Score).DefaultIfEmpty(double.NegativeInfinity).Max();
            return new Fit(code, Math.Max(YearTail(code), PeriodTail(code)), weighed.Score - rival);
        }

        private int Disagree(DateCode code, DateEvidence[] all) => all.Count(t => !Agrees(code, t));

        private bool Agrees(DateCode code, DateEvidence told) => code.Read(told.Serial, _from, _to)?.Any(d => told.Fits(d)) == true;

        private IReadOnlyList<string> Examples(DateCode code, DateEvidence[] all, bool agreeing) =>
            [.. all.Where(t => Agrees(code, t) == agreeing).Take(MostExamples).Select(t => DateCodeExample.Write(code, t, _from, _to))];

        private IEnumerable<PeriodCode> Periods(YearCode year)
        {
            for (int at = 0; at < _length; at++)
            {
                if (!Overlaps(at, 1))
                {
                    foreach (string symbols in PeriodCode.MonthSymbols)
                    {
                        yield return new PeriodCode(at, symbols, WithinYear.Month);
                    }
                }

                if (at + 2 <= _length && !Overlaps(at, 2))
                {
                    yield return new PeriodCode(at, "", WithinYear.Month);
                    yield return new PeriodCode(at, "", WithinYear.Week);
                }
            }

            bool Overlaps(int at, int length) => at < year.At + year.Length && year.At < at + length;
        }

        // Null: too many serials contradict it.
        private Weighed? Weigh(DateCode code)
        {
            int fits = 0;
            double score = 0;
            foreach (DateEvidence told in _told)
            {
                IReadOnlyList<DaySpan>? days = code.Read(told.Serial, _from, _to);
                fits += days?.Any(d => told.Fits(d)) == true ? 1 : 0;
                score += Math.Log(Math.Max(1e-4, days?.Sum(d => told.Chance(d)) ?? 0));
            }

            return fits < LeastAgreeing * _told.Length ? null : new Weighed(code, score - code.Places.Sum(p => _background[p]));
        }

        // Log likelihood of one place if its characters were drawn by their frequencies.
        private double Background(int at) => _told.CountBy(t => t.Serial[at]).Sum(c => c.Value * Math.Log(c.Value / (double)_told.Length));

        // Some serials are read by one code as days that the other excludes.
        private bool Differs(DateCode one, DateCode other) => _told.Count(t =>
        {
            DaySpan a = Likeliest(one, t), b = Likeliest(other, t);
            return a.From > b.To || b.From > a.To;
        }) > OtherReading * _told.Length;

        private DaySpan Likeliest(DateCode code, DateEvidence told) =>
            code.Read(told.Serial, _from, _to) is { Count: > 0 } days ? days.MaxBy(told.Chance) : new DaySpan(int.MinValue, int.MinValue);

        // The year against all dates.
        private double YearTail(DateCode code) => Tail([_told], t => code.Year.Offset(t.Serial), new DateCode(code.Year, PeriodCode.None));

        // The month or week against the dates of serials with the same year code.
        private double PeriodTail(DateCode code) => code.Period.Kind == WithinYear.None ? 0
            : Tail([.. _told.GroupBy(t => code.Year.Offset(t.Serial)).Where(g => g.Count() > 1).Select(g => g.ToArray())], t => code.Period.Value(t.Serial), code);

        // Best of the limits on the time in stock, which count as tried.
        private double Tail(DateEvidence[][] groups, Func<DateEvidence, int> value, DateCode code)
        {
            double least = 1;
            foreach (int stock in Stocks)
            {
                double pairs = 0, fitting = 0;
                int n = 0, own = 0;
                foreach (DateEvidence[] group in groups)
                {
                    foreach (IGrouping<int, DateEvidence> same in group.GroupBy(value).Where(s => s.Key >= 0))
                    {
                        IReadOnlyList<DaySpan> days = code.Read(same.First().Serial, _from, _to) ?? [];
                        int fit = group.Count(t => days.Any(d => t.Fits(d, stock))), ownFit = same.Count(t => days.Any(d => t.Fits(d, stock)));
                        int count = same.Count();
                        fitting += ((double)count * fit) - ownFit;
                        pairs += (double)count * (group.Length - 1);
                        own += ownFit;
                        n += count;
                    }
                }

                if (n > 0 && pairs > 0)
                {
                    least = Math.Min(least, AtLeast(own, n, Math.Max(fitting, 1) / pairs));
                }
            }

            return least;
        }

        private static double AtLeast(int k, int n, double p) => p >= 1 ? 1 : new BinomialDistribution(n, p).UpperTail(k - 1);

        private SerialDateRuleText Rule(DateCode code, string brand, DateEvidence[] all) => LearnedRuleText.Write(code, brand, all, _from, _to, FewestFixed);

        private sealed record Weighed(DateCode Code, double Score);
    }
}
