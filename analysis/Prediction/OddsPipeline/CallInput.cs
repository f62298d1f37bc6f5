using System.Globalization;
using Microsoft.ML.Data;
using PartsSignal.Analysis.Vocabulary;

namespace PartsSignal.Analysis.Prediction.OddsPipeline;

/// <summary>
/// A call as the learning library reads it: the input columns of the model file. Every column must be there; where a fact is
/// not known, the text is empty and the number is NaN.
/// </summary>
public class CallInput
{
    /// <summary>washer, dryer, dishwasher, refrigerator, range, microwave, other, a type of the shop's own, or empty.</summary>
    [ColumnName("appliance_type")]
    public string ApplianceType { get; set; } = "";

    /// <summary>Brand as the store writes it.</summary>
    [ColumnName("brand")]
    public string Brand { get; set; } = "";

    /// <summary>Model number as the store writes it: upper case, no blanks.</summary>
    [ColumnName("model_number")]
    public string ModelNumber { get; set; } = "";

    /// <summary>Family of the model.</summary>
    [ColumnName("model_family")]
    public string ModelFamily { get; set; } = "";

    /// <summary>Age of the appliance on the day of the call, years, 0 or more. Below 0 or NaN: not known.</summary>
    [ColumnName("age_years")]
    public double AgeYears { get; set; } = double.NaN;

    /// <summary>How the age is known: <c>register</c>, <c>date code</c>, <c>purchase date</c>, <c>stated</c>. The first two also tell the quarter it was built in.</summary>
    [ColumnName("age_basis")]
    public string AgeBasis { get; set; } = "";

    /// <summary>Day of the call. The earliest day there is (no value): not known.</summary>
    [ColumnName("opened_on")]
    public DateTime OpenedOn { get; set; }

    /// <summary>The complaint as typed.</summary>
    [ColumnName("complaint_text")]
    public string ComplaintText { get; set; } = "";

    /// <summary>Its kind, such as <c>no_fill</c>; <c>other</c>: the words are in no table, so the model reads them itself; empty: nothing was said.</summary>
    [ColumnName("complaint_kind")]
    public string ComplaintKind { get; set; } = "";

    /// <summary>Error code on the display.</summary>
    [ColumnName("error_code")]
    public string ErrorCode { get; set; } = "";

    /// <summary><c>household</c> or <c>contract</c>.</summary>
    [ColumnName("customer_kind")]
    public string CustomerKind { get; set; } = "";

    /// <summary>
    /// Jobs on this appliance that were closed before the call, the latest first, parted by blanks, each as
    /// <c>days:need:kind</c>: days between its closing and the call (1 or more), what it needed (empty: nobody knows) and its
    /// complaint kind. A visit that is not written this way is left out.
    /// </summary>
    [ColumnName("earlier_visits")]
    public string EarlierVisits { get; set; } = "";

    /// <summary>The row of a call.</summary>
    /// <param name="call">The call.</param>
    /// <param name="openedOn">Its day.</param>
    public static CallInput From(Call call, DateOnly openedOn) => new()
    {
        ApplianceType = call.ApplianceType,
        Brand = call.Brand ?? "",
        ModelNumber = call.ModelNumber ?? "",
        ModelFamily = call.ModelFamily ?? "",
        AgeYears = call.AgeYears ?? double.NaN,
        AgeBasis = call.AgeBasis,
        OpenedOn = openedOn.ToDateTime(TimeOnly.MinValue),
        ComplaintText = call.ComplaintText ?? "",
        ComplaintKind = call.ComplaintKind,
        ErrorCode = call.ErrorCode ?? "",
        CustomerKind = call.CustomerKind,
        EarlierVisits = string.Join(' ', call.Earlier.Select(v => string.Create(CultureInfo.InvariantCulture, $"{v.DaysAgo}:{v.Need}:{v.ComplaintKind}"))),
    };

    /// <summary>The call of a row.</summary>
    internal Call ToCall()
    {
        var call = new Call
        {
            ApplianceType = Text(ApplianceType) ?? Call.Unknown,
            Brand = Text(Brand),
            ModelNumber = Text(ModelNumber),
            ModelFamily = Text(ModelFamily),
            AgeYears = AgeYears is >= 0 and < double.PositiveInfinity ? AgeYears : null,
            AgeBasis = Text(AgeBasis) ?? Call.Unknown,
            ComplaintText = Text(ComplaintText),
            ComplaintKind = Text(ComplaintKind) ?? Need.NoComplaint,
            ErrorCode = Text(ErrorCode),
            CustomerKind = Text(CustomerKind) ?? Call.Unknown,
            Earlier = [.. (EarlierVisits ?? "").Split(' ').Select(Visit).OfType<EarlierVisit>()],
        };
        return OpenedOn.Year > Oldest ? call.On(DateOnly.FromDateTime(OpenedOn)) : call with { Month = 0 };
    }

    private const int Oldest = 1900;

    private static string? Text(string? text) => string.IsNullOrEmpty(text) ? null : text;

    private static EarlierVisit? Visit(string text) =>
        text.Split(':') is [var days, var need, var kind] && int.TryParse(days, NumberStyles.None, CultureInfo.InvariantCulture, out int ago) && ago > 0
            ? new EarlierVisit(ago, Text(need), kind)
            : null;
}

/// <summary>What the model file answers: the columns it adds to those of the calls.</summary>
public sealed class CallOdds
{
    /// <summary>Name of the column with the odds.</summary>
    public const string ScoreColumn = "Score";

    /// <summary>One probability per need, summing to 1. The names of its slots are the needs, in ordinal order.</summary>
    [ColumnName(ScoreColumn)]
    public float[] Score { get; set; } = [];

    /// <summary>The likeliest need; the first of equals.</summary>
    [ColumnName("PredictedNeed")]
    public string PredictedNeed { get; set; } = "";
}
