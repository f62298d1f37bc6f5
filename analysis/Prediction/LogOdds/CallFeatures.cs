using System.Globalization;
using PartsSignal.Analysis.Vocabulary;

namespace PartsSignal.Analysis.Prediction.LogOdds;

/// <summary>One fact of a call.</summary>
/// <param name="Group">Its group.</param>
/// <param name="Key">Its name, unique over all groups.</param>
/// <param name="Value">Its value; 1 for a plain fact.</param>
/// <param name="OnlyNeed">The one need it speaks about, or null if it speaks about every need.</param>
public readonly record struct Feature(FeatureGroup Group, string Key, double Value = 1, string? OnlyNeed = null);

/// <summary>
/// The facts of a call as sums of log odds. With a Weibull life per component and family, and odds per component of how
/// a fault shows, the true log odds are exactly such a sum: base rate + family + (shape - 1) log age + complaint + season
/// + customer.
/// </summary>
public static class CallFeatures
{
    /// <summary>Age around which the age slope turns, years.</summary>
    public const double TypicalAge = 7;

    private const double YoungestAge = 0.05;
    private const double BatchYears = 4;
    private const int MostVisits = 6;

    /// <summary>All facts of a call. Words nobody typed before are left out.</summary>
    public static IEnumerable<Feature> From(Call booked, LearnedComplaintReader kinds) =>
        From(booked with { ComplaintKind = kinds.KindOf(booked) }, kinds.Words.Meant(booked.ComplaintText));

    /// <summary>All facts of a call whose complaint has been read.</summary>
    /// <param name="call">The call with the kind its complaint was read as.</param>
    /// <param name="stems">Stems of the known words of its complaint.</param>
    public static IEnumerable<Feature> From(Call call, IReadOnlyList<string> stems)
    {
        string type = call.ApplianceType, kind = call.ComplaintKind;
        yield return new(FeatureGroup.Type, $"type:{type}");
        yield return new(FeatureGroup.Kind, $"kind:{kind}");
        yield return new(FeatureGroup.TypeKind, $"kind:{kind}/{type}");
        if (call.Brand is { } brand)
        {
            yield return new(FeatureGroup.Brand, $"brand:{brand}/{type}");
        }

        if (call.ModelFamily is { } family)
        {
            yield return new(FeatureGroup.Family, $"family:{family}");
            yield return new(FeatureGroup.FamilyKind, $"family:{family}/{kind}");
            if (call.MadeOn is { } made && call.AgeYears < BatchYears)
            {
                yield return new(FeatureGroup.Batch, string.Create(CultureInfo.InvariantCulture, $"built:{family}/{made.Year}"));
                yield return new(FeatureGroup.Batch, string.Create(CultureInfo.InvariantCulture, $"built:{family}/{made.Year}-{(made.Month + 2) / 3}"));
            }

            if (call.ModelNumber is { } model)
            {
                yield return new(FeatureGroup.Model, $"model:{model}");
            }
        }

        foreach (Feature feature in AgeAndSeason(call).Concat(Customer(call)).Concat(History(call)))
        {
            yield return feature;
        }

        bool unread = kind is Need.OtherComplaint or Need.NoComplaint;
        foreach (string word in stems)
        {
            yield return unread ? new(FeatureGroup.UnreadWord, $"unread:{word}/{type}") : new(FeatureGroup.Word, $"word:{word}");
        }
    }

    /// <summary>Logarithm of age over the typical age, the youngest ages held at three months.</summary>
    public static double LogAge(double years) => Math.Log(Math.Max(years, YoungestAge) / TypicalAge);

    private static IEnumerable<Feature> AgeAndSeason(Call call)
    {
        string type = call.ApplianceType;
        if (call.AgeYears is { } years)
        {
            double age = LogAge(years);
            yield return new(FeatureGroup.Age, "log_age", age);
            yield return new(FeatureGroup.Age, $"log_age/{type}", age);
            yield return new(FeatureGroup.AgeKind, $"log_age/{call.ComplaintKind}", age);
            if (years < 1)
            {
                yield return new(FeatureGroup.AgeKind, $"young/{call.ComplaintKind}/{type}");
            }
        }

        yield return new(FeatureGroup.AgeBand, $"age:{AgeBand.FromYears(call.AgeYears)?.ToString() ?? AgeBand.UnknownText}/{type}");
        if (call.Month == 0)
        {
            yield break;
        }

        double turn = 2 * Math.PI * (call.Month - 0.5) / 12;
        yield return new(FeatureGroup.Season, "summer", -Math.Cos(turn));
        yield return new(FeatureGroup.Season, "spring", Math.Sin(turn));
    }

    private static IEnumerable<Feature> Customer(Call call)
    {
        yield return new(FeatureGroup.Customer, $"customer:{call.CustomerKind}");
        yield return new(FeatureGroup.Customer, $"customer:{call.CustomerKind}/{call.ApplianceType}");
        if (call.ErrorCode is { } code)
        {
            yield return new(FeatureGroup.Code, $"code:{code}");
            yield return new(FeatureGroup.Code, $"code:{code}/{call.ApplianceType}/{call.Brand}");
        }
    }

    private static IEnumerable<Feature> History(Call call)
    {
        yield return new(FeatureGroup.History, $"earlier:{Math.Min(call.Earlier.Count, 3).ToString(CultureInfo.InvariantCulture)}");
        if (call.Earlier.Count == 0)
        {
            yield break;
        }

        EarlierVisit last = call.Earlier[0];
        string since = last.DaysAgo <= 35 ? "month" : last.DaysAgo <= 180 ? "half_year" : "later";
        yield return new(FeatureGroup.History, $"since:{since}");
        if (since == "month")
        {
            yield return new(FeatureGroup.History, $"since:month/{(last.ComplaintKind == call.ComplaintKind ? "same" : "other")}");
            yield return new(FeatureGroup.History, $"after:{last.Need ?? "unknown"}");
        }

        var met = new HashSet<string>(StringComparer.Ordinal);
        foreach (EarlierVisit visit in call.Earlier.Take(MostVisits))
        {
            if (visit.Need is { } need && met.Add(need))
            {
                double years = visit.DaysAgo / 365.25;
                string again = years < 0.1 ? "month" : years < 0.5 ? "half_year" : years < 2 ? "two_years" : "later";
                yield return new(FeatureGroup.Renewed, $"again:{again}", 1, need);
                yield return new(FeatureGroup.Renewed, "renewed", Math.Min(0, LogAge(years) - LogAge(call.AgeYears ?? TypicalAge)), need);
            }
        }
    }
}
