using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.Prediction.Answers;

/// <summary>What the shop knows of one appliance from earlier jobs.</summary>
public sealed record UnitHistory
{
    /// <summary>Jobs closed before the call, the newest first.</summary>
    public IReadOnlyList<EarlierVisit> Visits { get; init; } = [];

    /// <summary>Model number of the newest job that has one, or null if none has.</summary>
    public string? ModelNumber { get; init; }

    /// <summary>household, contract or unknown.</summary>
    public string CustomerKind { get; init; } = Call.Unknown;

    /// <summary>Middle of the span it was built in, or null if not known.</summary>
    public DateOnly? Made { get; init; }

    /// <summary>How that is known: register, date code, purchase date, stated, unknown.</summary>
    public string AgeBasis { get; init; } = Call.Unknown;

    /// <summary>Reads the history of an appliance.</summary>
    /// <param name="database">A session over the store.</param>
    /// <param name="units">Identifiers it may go by; of several with jobs none is taken, for nobody can tell which is meant.</param>
    /// <param name="on">Day of the call.</param>
    /// <returns>Null: the shop has no closed job on it.</returns>
    public static UnitHistory? Read(Database database, IReadOnlyList<string> units, DateOnly on)
    {
        IReadOnlyList<Row> rows = database.Read<Row>(
            "queries/prediction/unit_jobs.sql",
            ("units", string.Join(',', units)), ("before", on));
        if (rows.Select(r => r.Unit).Distinct().Count() != 1)
        {
            return null;
        }

        Row? built = rows.FirstOrDefault(r => r.MadeFrom is not null && r.MadeTo is not null && r.MadeFrom <= on);
        return new UnitHistory
        {
            Visits = [.. rows.Select(r => new EarlierVisit(on.DayNumber - r.ClosedOn.DayNumber, r.Need, r.Kind))],
            ModelNumber = rows.FirstOrDefault(r => r.Model is not null)?.Model,
            CustomerKind = rows[0].Customer ?? Call.Unknown,
            Made = built is null ? null : DateOnly.FromDayNumber((built.MadeFrom!.Value.DayNumber + built.MadeTo!.Value.DayNumber) / 2),
            AgeBasis = built?.AgeBasis ?? Call.Unknown,
        };
    }

    private sealed record Row(
        [Column("unit_id")] string Unit, DateOnly ClosedOn, [Column("main_component")] string? Need, [Column("complaint_kind")] string Kind,
        [Column("model_number")] string? Model, DateOnly? MadeFrom, DateOnly? MadeTo, string AgeBasis, [Column("customer_kind")] string? Customer);
}
