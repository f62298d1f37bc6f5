using System.Globalization;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Intervals;

namespace PartsSignal.Analysis.Rates;

/// <summary>The unpooled figure of one subject in one group.</summary>
internal static class RawRate
{
    /// <summary>Unit of a share.</summary>
    public const string Share = "share";

    /// <summary>Unit of a rate.</summary>
    public const string PerHundredYears = "per 100 unit-years";

    /// <summary>What the events of a subject are divided by: calls, or unit-years.</summary>
    public static double Exposure(GroupSize size, RateSubject subject) =>
        size.Group.Basis != RateBasis.ShareOfCalls ? size.UnitDays / RateBasis.DaysPerYear
        : subject.Kind == RateSubject.Component ? size.KnownCalls
        : size.Calls;

    /// <summary>
    /// Share with Wilson's interval, or rate per 100 unit-years with Garwood's, from no untold event to all of them; too few:
    /// missing with the reason.
    /// </summary>
    public static Estimate From(GroupSize size, RateSubject subject, long events, UntoldEvents untold, RateOptions options)
    {
        double exposure = Exposure(size, subject);
        if (size.Group.Basis == RateBasis.ShareOfCalls)
        {
            return exposure is > 0 && exposure < options.FewestCalls
                ? Estimate.None(string.Create(CultureInfo.InvariantCulture, $"too few: {exposure:0} of {options.FewestCalls} calls"))
                : Proportion.Wilson(events, (long)exposure, options.Confidence);
        }

        return exposure is > 0 && exposure < options.FewestUnitYears
            ? Estimate.None(string.Create(CultureInfo.InvariantCulture, $"too few: {exposure:0.0} of {options.FewestUnitYears:0} unit-years"))
            : untold.Widen(events, exposure / 100, options.Confidence);
    }
}
