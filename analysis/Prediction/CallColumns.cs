namespace PartsSignal.Analysis.Prediction;

/// <summary>A row of <c>queries/prediction/calls.sql</c>: a job as booked, and what became of it.</summary>
internal sealed record CallRow(
    string JobId, DateOnly OpenedOn, DateOnly? ClosedOn, string? UnitId, string? MainComponent, string? ApplianceType, string? Brand, string? ModelNumber,
    string? ModelFamily, double? AgeYears, string? AgeBasis, string? ComplaintText, string ComplaintKind, string? ErrorCode, string? CustomerKind, string? Visits)
{
    /// <summary>What was known when it was booked. An age below 0 is not known.</summary>
    public Call Call()
    {
        double? age = AgeYears is >= 0 ? AgeYears : null;
        string basis = AgeBasis ?? Prediction.Call.Unknown;
        return new Call
        {
            ApplianceType = ApplianceType ?? Prediction.Call.Unknown,
            Brand = Brand,
            ModelNumber = ModelNumber,
            ModelFamily = ModelFamily,
            AgeYears = age,
            AgeBasis = basis,
            MadeOn = Prediction.Call.BuiltOn(OpenedOn, age, basis),
            ComplaintText = ComplaintText,
            ComplaintKind = ComplaintKind,
            ErrorCode = ErrorCode,
            CustomerKind = CustomerKind ?? Prediction.Call.Unknown,
            Month = OpenedOn.Month,
            Earlier = EarlierVisit.Parse(Visits),
        };
    }
}
