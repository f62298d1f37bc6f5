using System.Globalization;
using PartsSignal.Analysis.CrossReference.SerialDates;
using PartsSignal.Analysis.PartPrediction.Answers;
using PartsSignal.Analysis.PartPrediction.Calls;
using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Turns the options of a lookup into a call.</summary>
internal static class CallReader
{
    private static readonly string[] Types = ["washer", "dryer", "dishwasher", "refrigerator", "range", "microwave", "other"];
    private static readonly string[] Customers = ["household", "contract", "unknown"];

    /// <summary>The call.</summary>
    /// <param name="settings">The options.</param>
    /// <param name="facts">Models and families.</param>
    /// <param name="history">What the shop knows of the appliance with a serial, by the brands it may be of and the day of the call.</param>
    /// <param name="clock">Tells today.</param>
    /// <exception cref="BadInputException">An option cannot be used; all such options are named.</exception>
    public static Call Read(LookupSettings settings, LookupFacts facts, Func<IEnumerable<string?>, DateOnly, UnitHistory?> history, TimeProvider clock)
    {
        DateOnly today = DateOnly.FromDateTime(clock.GetLocalNow().DateTime);
        DateOnly? on = settings.On is null ? today : Day(settings.On);
        Refuse(settings, on);
        (KnownModel Model, string Basis)? found = facts.Resolve(settings.Model);
        UnitHistory? unit = settings.Serial is null ? null : history(found?.Model.Brand is { } named ? [named] : [null, .. facts.Brands], on!.Value);
        found ??= facts.Resolve(unit?.ModelNumber);
        string type = found?.Model.ApplianceType ?? settings.ApplianceType ?? Call.Unknown;
        (double? age, string basis) = Age(settings, unit, found?.Model.Brand, on!.Value);
        WordSets words = WordSets.Load(settings.Input);
        string? asked = settings.Complaint?.Trim();
        return new Call
        {
            ApplianceType = type,
            Brand = found?.Model.Brand,
            ModelNumber = found?.Model.ModelNumber is { Length: > 0 } number ? number : null,
            ModelFamily = found?.Model.ModelFamily,
            AgeYears = age,
            AgeBasis = basis,
            MadeOn = Call.BuiltOn(on.Value, age, basis),
            ComplaintText = asked?.Replace('_', ' '),
            ComplaintKind = words.Complaints.Kind(asked?.Replace('_', ' '), type == Call.Unknown ? null : type),
            ErrorCode = settings.Code ?? ErrorCodeText.Find(asked),
            CustomerKind = settings.Customer ?? unit?.CustomerKind ?? "household",
            Month = on.Value.Month,
            Earlier = unit?.Visits ?? [],
        };
    }

    private static void Refuse(LookupSettings settings, DateOnly? on)
    {
        var faults = new List<string>();
        if (on is null)
        {
            faults.Add($"--on {settings.On}: is no date; write it as 2026-11-24.");
        }

        if (settings.Age is < 0 or > 80)
        {
            faults.Add(string.Create(CultureInfo.InvariantCulture, $"--age {settings.Age}: must lie from 0 to 80 years."));
        }

        if (settings.ApplianceType is { } type && !Types.Contains(type))
        {
            faults.Add($"--type {type}: must be one of {string.Join(", ", Types)}.");
        }

        if (settings.Customer is { } customer && !Customers.Contains(customer))
        {
            faults.Add($"--customer {settings.Customer}: must be one of {string.Join(", ", Customers)}.");
        }

        if (settings.Model is null && settings.ApplianceType is null && settings.Complaint is null && settings.Serial is null)
        {
            faults.Add("Say at least --model, --serial, --type or --complaint.");
        }

        if (faults.Count > 0)
        {
            throw new BadInputException(faults);
        }
    }

    private static (double? Years, string Basis) Age(LookupSettings settings, UnitHistory? unit, string? brand, DateOnly on)
    {
        if (settings.Age is { } stated)
        {
            return (stated, "stated");
        }

        if (unit?.Made is { } made && made <= on)
        {
            return (Years(made, on), unit.AgeBasis);
        }

        if (settings.Serial is null)
        {
            return (null, Call.Unknown);
        }

        SerialDateReading reading = SerialCodes.Load(settings.Input).Rules.Read(brand, settings.Serial, on);
        BuildInterval? built = reading.Candidates.LastOrDefault(c => c.From <= on);
        return built is null ? (null, Call.Unknown) : (Years(built.Middle, on), "date code");
    }

    private static double Years(DateOnly made, DateOnly on) => Math.Max(0, (on.DayNumber - made.DayNumber) / 365.25);

    private static DateOnly? Day(string text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) ? day : null;
}
