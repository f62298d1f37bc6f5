namespace PartsSignal.Analysis.Prediction;

/// <summary>
/// One call as the office knows it when it is booked. Nothing here is learned on site or later.
/// </summary>
public sealed record Call
{
    /// <summary>Text for a type, customer or age basis that is not known.</summary>
    public const string Unknown = "unknown";

    /// <summary>washer, dryer, dishwasher, refrigerator, range, microwave, other, or <see cref="Unknown"/>.</summary>
    public string ApplianceType { get; init; } = Unknown;

    /// <summary>Brand, or null if not known.</summary>
    public string? Brand { get; init; }

    /// <summary>Cleaned model number, or null if not known.</summary>
    public string? ModelNumber { get; init; }

    /// <summary>Family of the model, or null if not known.</summary>
    public string? ModelFamily { get; init; }

    /// <summary>Age in years on the day of the call, 0 or more, or null if not known.</summary>
    public double? AgeYears { get; init; }

    /// <summary>How the age is known: register, date code, purchase date, stated, unknown.</summary>
    public string AgeBasis { get; init; } = Unknown;

    /// <summary>Day it was built, where a register or a date code tells it within months, or null if not known so well.</summary>
    public DateOnly? MadeOn { get; init; }

    /// <summary>The complaint as typed, or null if nothing was typed.</summary>
    public string? ComplaintText { get; init; }

    /// <summary>Its kind by the table of complaint words; <c>other</c> and <c>none</c> where the table has no answer.</summary>
    public string ComplaintKind { get; init; } = Vocabulary.Need.NoComplaint;

    /// <summary>Error code as told by the customer, or null if there is none.</summary>
    public string? ErrorCode { get; init; }

    /// <summary>How the typed model was found where it is in no list, as a sentence; null: it is listed, or none was typed.</summary>
    public string? ModelNote { get; init; }

    /// <summary>household, contract or unknown.</summary>
    public string CustomerKind { get; init; } = Unknown;

    /// <summary>Month of the call, 1 to 12; 0 if it is not known.</summary>
    public int Month { get; init; } = 1;

    /// <summary>Jobs on this unit that were closed before the call, the latest first; empty: none known.</summary>
    public IReadOnlyList<EarlierVisit> Earlier { get; init; } = [];

    /// <summary>
    /// The call with what follows from its day: its month, and the day of building if the age is known within months.
    /// An age below 0 is not known. Every call that is learned from or asked about passes here.
    /// </summary>
    /// <param name="day">Day of the call.</param>
    public Call On(DateOnly day)
    {
        double? age = AgeYears is >= 0 ? AgeYears : null;
        return this with
        {
            AgeYears = age,
            MadeOn = age is { } years && AgeBasis is ("register" or "date code") ? day.AddDays(-(int)Math.Round(years * 365.25)) : null,
            Month = day.Month,
        };
    }
}

/// <summary>A job on the same unit that was closed before the call.</summary>
/// <param name="DaysAgo">Days between its closing and the call, 1 or more.</param>
/// <param name="Need">What it needed, or null if nobody knows.</param>
/// <param name="ComplaintKind">Its complaint kind.</param>
public sealed record EarlierVisit(int DaysAgo, string? Need, string ComplaintKind)
{
    /// <summary>Reads visits written as <c>days:need:kind</c>, parted by blanks, the need empty where nobody knows it.</summary>
    public static IReadOnlyList<EarlierVisit> Parse(string? text) =>
        string.IsNullOrEmpty(text)
            ? []
            : [.. text.Split(' ').Select(v => v.Split(':')).Select(p => new EarlierVisit(
                int.Parse(p[0], System.Globalization.CultureInfo.InvariantCulture), p[1].Length == 0 ? null : p[1], p[2]))];
}
