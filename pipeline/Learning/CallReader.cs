using PartsSignal.Analysis.CrossReference;
using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.Answers;
using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Learning;

/// <summary>Finds what the store knows of the appliance with a serial.</summary>
/// <param name="serial">Serial as typed.</param>
/// <param name="brands">Brands it may be; null among them stands for rows without a brand.</param>
/// <param name="on">Day of the call.</param>
internal delegate UnitHistory? UnitFinder(string serial, IEnumerable<string?> brands, DateOnly on);

/// <summary>
/// Turns a question into the call the predictor understands. The command line, the server and the phone page all go
/// through it, so the same question gets the same answer.
/// </summary>
/// <param name="facts">Models, families and brands the shop knows.</param>
/// <param name="complaints">The shop's complaint words.</param>
/// <param name="serialCodes">How serials tell the build date; read only if a serial has to be dated.</param>
/// <param name="findUnit">Looks up a serial in the store.</param>
/// <param name="appliances">Words for appliances: a complaint may name the type; null: not looked for.</param>
internal sealed class CallReader(LookupFacts facts, ComplaintWordTable complaints, Func<SerialCodes> serialCodes, UnitFinder findUnit, ApplianceNames? appliances = null)
{
    /// <summary>The call, for a question without faults. A complaint that is the name of a kind is that kind; any other is read by its words.</summary>
    public Call Read(CallQuestion question, DateOnly today)
    {
        DateOnly on = question.Day() ?? today;
        (KnownModel Model, string Basis)? found = facts.Resolve(question.Model);
        KnownModel? model = found?.Model;
        UnitHistory? unit = question.Serial is { } serial ? findUnit(serial, model?.Brand is { } brand ? [brand] : [null, .. facts.Brands], on) : null;
        model ??= facts.Resolve(unit?.ModelNumber)?.Model;
        (double? age, string basis) = Age(question, unit, model?.Brand, on);
        string? complaint = question.Complaint?.Trim();
        string? words = complaint?.Replace('_', ' ');
        string type = model?.ApplianceType ?? question.ApplianceType ?? appliances?.Named(words) ?? Call.Unknown;
        return new Call
        {
            ApplianceType = type,
            Brand = model?.Brand,
            ModelNumber = model?.ModelNumber is { Length: > 0 } number ? number : null,
            ModelFamily = model?.ModelFamily,
            AgeYears = age,
            AgeBasis = basis,
            ComplaintText = words,
            ComplaintKind = complaint is not null && complaints.IsKind(complaint) ? complaint : complaints.Kind(words, type == Call.Unknown ? null : type),
            ErrorCode = question.Code ?? ErrorCodeText.Find(complaint),
            ModelNote = Note(question.Model, found),
            CustomerKind = question.Customer ?? unit?.CustomerKind ?? "household",
            Earlier = unit?.Visits ?? [],
        }.On(on);
    }

    private static string? Note(string? typed, (KnownModel Model, string Basis)? found) => found switch
    {
        { Basis: "base" } or { Basis: "beginning", Model.ModelNumber: "" } => $"Model {typed} is not in your lists. The answer is for family {found.Value.Model.ModelFamily}, whose model numbers start the same way.",
        { Basis: "look-alike" } => $"Model {typed} is not in your lists. It was read as {found.Value.Model.ModelNumber}, which looks almost the same.",
        _ => null,
    };

    private (double? Years, string Basis) Age(CallQuestion question, UnitHistory? unit, string? brand, DateOnly on)
    {
        if (question.Age is { } stated)
        {
            return (stated, "stated");
        }

        if (unit?.Made is { } made && made <= on)
        {
            return (Years(made, on), unit.AgeBasis);
        }

        if (question.Serial is null)
        {
            return (null, Call.Unknown);
        }

        SerialDateReading reading = serialCodes().Read(brand, question.Serial, on);
        BuildInterval? built = reading.Candidates.LastOrDefault(c => c.From <= on);
        return built is null ? (null, Call.Unknown) : (Years(built.Middle, on), "date code");
    }

    private static double Years(DateOnly made, DateOnly on) => Math.Max(0, (on.DayNumber - made.DayNumber) / 365.25);
}
