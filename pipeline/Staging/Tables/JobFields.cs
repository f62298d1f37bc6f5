using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Staging.Tables;

/// <summary>Fields of a job log beside the appliance and the parts.</summary>
internal sealed class JobFields(FieldMap map, WordSets words)
{
    private const double MaxAge = 100;
    private const int ComplaintBits = 15;
    private const int PeopleBits = 14;

    public MappedField JobId { get; } = map.Field("job_id");

    public CachedField<DateOnly> Opened { get; } = new(map.Field("opened_on"), static (row, field) => row.NeededDay(field));

    public CachedField<DateOnly?> Closed { get; } = new(map.Field("closed_on"), static (row, field) => row.Day(field));

    public CachedField<string?> Technician { get; } = new(map.Field("technician"), static (row, field) => row.Word(field), PeopleBits);

    public CachedField<string?> Van { get; } = new(map.Field("van"), static (row, field) => row.Word(field), PeopleBits);

    public CachedField<string?> CustomerKind { get; } = new(map.Field("customer_kind"), static (row, field) => CustomerKindText.Read(row.Span(field)));

    public CachedField<DateOnly?> Purchased { get; } = new(map.Field("purchased_on"), static (row, field) => row.Day(field, lesser: true));

    public CachedField<double?> Age { get; } = new(map.Field("age_years"), ReadAge);

    public CachedField<ComplaintText?> Complaint { get; } = new(map.Field("complaint"), (row, field) => ComplaintText.Parse(row.FreeText(field), words.Complaints), ComplaintBits);

    public CachedField<string?> ErrorCode { get; } = new(map.Field("error_code"), static (row, field) => ErrorCodeText.Plain(row.Text(field)));

    public CachedField<string> Outcome { get; } = new(map.Field("outcome"), (row, field) => ReadOutcome(row, field, words.Outcomes));

    public CachedField<int?> Visits { get; } = new(map.Field("visits"), static (row, field) => row.Quantity(field, lesser: true));

    public CachedField<double?> Labour { get; } = new(map.Field("labour"), ReadLabour);

    public CachedField<DateTime?> Updated { get; } = new(map.Field("updated_on"), static (row, field) => row.Time(field));

    public MappedField PartsList { get; } = map.Field("parts_list");

    private static string ReadOutcome(MappedRow row, MappedField field, SynonymTable outcomes)
    {
        string? typed = row.Word(field);
        string? known = outcomes.Find(typed);
        if (typed is not null && known is null)
        {
            row.Skip(field, ReasonCode.UnknownWord);
        }

        return known ?? Analysis.Vocabulary.Outcome.Unknown;
    }

    private static double? ReadAge(MappedRow row, MappedField field)
    {
        ReadOnlySpan<char> text = row.Span(field);
        if (EmptyMark.Is(text))
        {
            return null;
        }

        if (!NumberText.TryRead(text, row.Style.Numbers, out decimal years))
        {
            row.Skip(field, ReasonCode.BadNumber);
            return null;
        }

        if ((double)years is < 0 or > MaxAge)
        {
            row.Skip(field, ReasonCode.OutOfRange);
            return null;
        }

        return (double)years;
    }

    private static double? ReadLabour(MappedRow row, MappedField field)
    {
        ReadOnlySpan<char> text = row.Span(field);
        if (EmptyMark.Is(text))
        {
            return null;
        }

        if (DurationText.TryRead(text, row.Style.LabourInHours, out double minutes))
        {
            return minutes;
        }

        row.Skip(field, ReasonCode.BadNumber);
        return null;
    }
}

/// <summary>Columns of staged jobs beside the appliance's.</summary>
internal sealed class JobColumns(StagedTable table)
{
    public TextColumn JobIds { get; } = table.Text("job_id");

    public ValueColumn<DateOnly> Opened { get; } = table.Day("opened_on");

    public ValueColumn<DateOnly> Closed { get; } = table.Day("closed_on");

    public WordColumn Technicians { get; } = table.Word("technician");

    public WordColumn Vans { get; } = table.Word("van");

    public WordColumn CustomerKinds { get; } = table.Word("customer_kind");

    public WordColumn SerialFaults { get; } = table.Word("serial_fault");

    public ValueColumn<DateOnly> Purchased { get; } = table.Day("purchased_on");

    public ValueColumn<double> Ages { get; } = table.Double("age_stated_years");

    public TextColumn Complaints { get; } = table.Text("complaint_text");

    public WordColumn ComplaintKinds { get; } = table.Word("complaint_kind");

    public WordColumn ErrorCodes { get; } = table.Word("error_code");

    public WordColumn Outcomes { get; } = table.Word("outcome");

    public ValueColumn<int> Visits { get; } = table.Int("visits");

    public ValueColumn<double> Labour { get; } = table.Double("labour_minutes");

    public ValueColumn<DateTime> Updated { get; } = table.Time("updated_on");
}
