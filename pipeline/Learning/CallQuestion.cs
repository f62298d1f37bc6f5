using System.Globalization;
using KnownTypes = PartsSignal.Analysis.Vocabulary.ApplianceType;

namespace PartsSignal.Pipeline.Learning;

/// <summary>A question about one call, as typed on the command line or sent to the server. Null means not given.</summary>
internal sealed record CallQuestion
{
    /// <summary>Longest text accepted in any field.</summary>
    public const int LongestText = 200;

    /// <summary>Name of the field of the appliance type.</summary>
    public const string TypeField = "type";

    /// <summary>Oldest age accepted, in years.</summary>
    public const int OldestAge = 80;

    /// <summary>The appliance types that can be named.</summary>
    public static readonly IReadOnlyList<string> ApplianceTypes = [.. KnownTypes.Named, KnownTypes.Other];

    private static readonly string[] CustomerKinds = ["household", "contract", "unknown"];

    /// <summary>Model number or model family.</summary>
    public string? Model { get; init; }

    /// <summary>What the customer said, or a complaint kind.</summary>
    public string? Complaint { get; init; }

    /// <summary>Serial number.</summary>
    public string? Serial { get; init; }

    /// <summary>Appliance type; used when the model does not tell.</summary>
    public string? ApplianceType { get; init; }

    /// <summary>Age in years. NaN stands for text that is not a number.</summary>
    public double? Age { get; init; }

    /// <summary>Error code on the display.</summary>
    public string? Code { get; init; }

    /// <summary>Kind of customer.</summary>
    public string? Customer { get; init; }

    /// <summary>Day of the call, <c>2026-11-24</c>; null means today.</summary>
    public string? On { get; init; }

    /// <summary>Everything that is wrong with the question, so that a caller can report all of it at once.</summary>
    /// <param name="ownTypes">Appliance types of the shop's own, or null if they are not known.</param>
    public IReadOnlyList<QuestionFault> Faults(IReadOnlyList<string>? ownTypes = null)
    {
        var faults = new List<QuestionFault>();
        foreach ((string field, string? text) in ((string, string?)[])[("model", Model), ("complaint", Complaint), ("serial", Serial), ("code", Code)])
        {
            if (text?.Length > LongestText)
            {
                faults.Add(new(field, null, $"must be at most {LongestText} characters."));
            }
        }

        if (On is not null && Day() is null)
        {
            faults.Add(new("on", On, "is not a date. Write it as 2026-11-24."));
        }

        if (Age is { } age && !(age >= 0 && age <= OldestAge))
        {
            faults.Add(new("age", age.ToString(CultureInfo.InvariantCulture), $"must be a number of years from 0 to {OldestAge}."));
        }

        string[] types = [.. ApplianceTypes.Union(ownTypes ?? [], StringComparer.Ordinal)];
        if (ApplianceType is { } type && !types.Contains(type))
        {
            faults.Add(new(TypeField, type, $"must be one of {string.Join(", ", types)}."));
        }

        if (Customer is { } customer && !CustomerKinds.Contains(customer))
        {
            faults.Add(new("customer", customer, $"must be one of {string.Join(", ", CustomerKinds)}."));
        }

        if (Model is null && ApplianceType is null && Complaint is null && Serial is null)
        {
            faults.Add(new(null, null, "Give at least one of model, type, complaint."));
        }

        return faults;
    }

    /// <summary>The day in <see cref="On"/>, or null if it is not given or not a date.</summary>
    public DateOnly? Day() =>
        DateOnly.TryParseExact(On, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) ? day : null;
}

/// <summary>One thing wrong with a question.</summary>
/// <param name="Field">The field, or null if it concerns the whole question.</param>
/// <param name="Typed">What was typed, or null if it should not be repeated.</param>
/// <param name="Message">What is wrong and what to do.</param>
internal sealed record QuestionFault(string? Field, string? Typed, string Message);
