using System.Globalization;
using PartsSignal.Analysis.Rates;
using PartsSignal.Analysis.Vocabulary;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Commands;

/// <summary>The rates the user asked for.</summary>
/// <param name="Component">Only this component, or null for all.</param>
/// <param name="Family">Only this family, or null for all.</param>
/// <param name="Age">Only this age band, or null for all.</param>
/// <param name="Complaint">Only calls with this complaint, or null for all.</param>
/// <param name="Month">First day of the month, or null for all time.</param>
/// <param name="By">What to split by, one of <see cref="Splits"/>, or null for by what is asked for.</param>
internal sealed record RatesQuery(string? Component, string? Family, string? Age, string? Complaint, DateOnly? Month, string? By = null)
{
    /// <summary>Split by the supplier of the parts fitted.</summary>
    public const string BySupplier = "supplier";

    private const string ByComplaint = "complaint";

    // As many names as a person reads in one line.
    private const int MostNamed = 6;

    /// <summary>What rates can be split by.</summary>
    public static readonly IReadOnlyList<string> Splits = ["type", "family", "brand", "age", ByComplaint, BySupplier, .. RateCut.Properties];

    /// <summary>Reads the options.</summary>
    /// <exception cref="BadInputException">Options cannot be used; every fault is named.</exception>
    public static RatesQuery Parse(RatesSettings settings)
    {
        var faults = new List<string>();
        string[] bands = [.. AgeBand.Standard.Select(b => b.ToString()), AgeBand.UnknownText];
        if (settings.Age is { } age && !bands.Contains(age))
        {
            faults.Add($"--age {age}: must be one of {string.Join(", ", bands)}.");
        }

        if (settings.Age is not null && settings.Complaint is not null)
        {
            faults.Add("--age and --complaint: too few calls would be left. Give only one of them.");
        }

        if (settings.By is { } by && !Splits.Contains(by))
        {
            faults.Add($"--by {by}: must be one of {string.Join(", ", Splits)}.");
        }

        bool narrowed = settings.Family is not null || settings.Age is not null || settings.Complaint is not null;
        if (settings.By == BySupplier && narrowed)
        {
            faults.Add("--by supplier: covers all appliances. Leave out --family, --age and --complaint.");
        }

        bool property = settings.By is { } cut && RateCut.Properties.Contains(cut);
        if (((settings.By == "brand" || property) && narrowed) || (settings.By == "type" && settings.Family is not null) || (settings.By == "age" && settings.Complaint is not null)
            || (settings.By == ByComplaint && settings.Age is not null))
        {
            faults.Add($"--by {settings.By}: cannot be combined with the family, age or complaint given. Leave those out.");
        }

        DateOnly? month = null;
        if (settings.Month is { } text)
        {
            if (DateOnly.TryParseExact(text + "-01", "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day))
            {
                month = day;
            }
            else
            {
                faults.Add($"--month {text}: is not a month. Write it as 2026-09.");
            }
        }

        return faults.Count == 0
            ? new RatesQuery(settings.Component, settings.Family, settings.Age, settings.Complaint, month, settings.By)
            : throw new BadInputException(faults);
    }

    /// <summary>The rates asked for, by basis, the most frequent first.</summary>
    /// <exception cref="BadInputException">A name is not in the log; every such name is named.</exception>
    public IReadOnlyList<FailureRate> Select(IReadOnlyList<FailureRate> all)
    {
        RequireKnown(all);
        return [.. all.Where(Matches)
            .OrderBy(r => Array.IndexOf(Order, r.Basis))
            .ThenBy(r => r.ApplianceType, StringComparer.Ordinal)
            .ThenBy(r => By is null && r.ModelFamily is not null && Family is null)
            .ThenBy(r => By == "age" ? Array.IndexOf(Ages, r.AgeBand) : 0)
            .ThenBy(r => r.GroupValue, StringComparer.Ordinal)
            .ThenByDescending(r => r.Events)
            .ThenBy(r => r.ModelFamily, StringComparer.Ordinal)
            .ThenBy(r => r.Subject, StringComparer.Ordinal)];
    }

    private static readonly string[] Order = [RateBasis.ShareOfCalls, RateBasis.RegisterUnitYears, RateBasis.SeenUnitYears, RateBasis.PartYears];

    private static readonly string[] Ages = [.. AgeBand.Standard.Select(b => b.ToString()), AgeBand.UnknownText];

    private string[] Groupings => this switch
    {
        { By: BySupplier } => ["any_supplier", "supplier"],
        { By: "brand" } => ["brand"],
        { By: { } property } when RateCut.Properties.Contains(property) => [property],
        { By: "type", Complaint: not null } => ["complaint", "type"],
        { By: "type", Age: not null } => ["age"],
        { By: "type" } => ["type"],
        { By: "family", Complaint: not null } => ["family_complaint", "family"],
        { By: "family", Age: not null } => ["family_age"],
        { By: "family" } => ["family"],
        { By: "age", Family: not null } => ["family_age"],
        { By: "age" } => ["age"],
        { By: ByComplaint, Component: not null, Family: not null } => ["family_complaint"],
        { By: ByComplaint, Component: not null } => ["complaint"],
        { By: ByComplaint, Family: not null } => ["family"],
        { By: ByComplaint } => ["type"],
        { Complaint: not null, Family: not null } => ["family_complaint", "family"],
        { Complaint: not null, Component: not null } => ["complaint", "family_complaint"],
        { Complaint: not null } => ["complaint", "type"],
        { Age: not null, Family: not null } => ["family_age"],
        { Age: not null, Component: not null } => ["age", "family_age"],
        { Age: not null } => ["age"],
        { Family: not null } => ["family"],
        { Component: not null } => ["type", "family"],
        _ => ["type"],
    };

    private bool Matches(FailureRate rate)
    {
        bool complaints = By == ByComplaint && Component is null;
        bool subject = rate.SubjectKind == RateSubject.Component
            ? !complaints && (Component is null || rate.Subject == Component) && (rate.GivenComplaint == Complaint || (By == ByComplaint && Complaint is null))
            : Component is null && (rate.Subject == Complaint || (complaints && Complaint is null));
        return subject
            && Groupings.Contains(rate.Grouping)
            && (Family is null || rate.ModelFamily == Family)
            && (Age is null || rate.AgeBand == Age)
            && (rate.Events > 0 || Family is not null || Component is not null);
    }

    private void RequireKnown(IReadOnlyList<FailureRate> all)
    {
        var faults = new List<string>();
        Require(faults, "--component", Component, all.Where(r => r.SubjectKind == RateSubject.Component).Select(r => r.Subject), "partssignal rates");
        Require(faults, "--complaint", Complaint, all.Where(r => r.SubjectKind == RateSubject.Complaint).Select(r => r.Subject), "partssignal rates --by complaint");
        Require(faults, "--family", Family, all.Select(r => r.ModelFamily).OfType<string>(), "partssignal rates --by family");
        if (faults.Count > 0)
        {
            throw new BadInputException(faults);
        }
    }

    private static void Require(List<string> faults, string option, string? value, IEnumerable<string> known, string all)
    {
        if (value is null)
        {
            return;
        }

        string[] names = [.. known.Distinct().Order(StringComparer.Ordinal)];
        if (!names.Contains(value))
        {
            IReadOnlyList<string> near = [.. NameSuggestions.Misspelled(value, names, MostNamed).Union(NameSuggestions.Find(value, names, MostNamed)).Take(MostNamed)];
            string there = names.Length == 0 ? "There are none to choose from."
                : names.Length <= MostNamed ? $"Choose from {string.Join(", ", names)}."
                : near.Count > 0 ? $"Similar names: {string.Join(", ", near)}."
                : $"See all names with '{all}'.";
            faults.Add($"{option} {value}: your log has no such calls. {there}");
        }
    }
}
