namespace PartsSignal.Pipeline.Staging.Kinds;

/// <summary>Fields of a job log beside the appliance and the parts.</summary>
internal sealed class JobFields(FieldMap map)
{
    public MappedField JobId { get; } = map.Field("job_id");

    public MappedField Opened { get; } = map.Field("opened_on");

    public MappedField Closed { get; } = map.Field("closed_on");

    public MappedField Technician { get; } = map.Field("technician");

    public MappedField Van { get; } = map.Field("van");

    public MappedField CustomerKind { get; } = map.Field("customer_kind");

    public MappedField Purchased { get; } = map.Field("purchased_on");

    public MappedField Age { get; } = map.Field("age_years");

    public MappedField Complaint { get; } = map.Field("complaint");

    public MappedField ErrorCode { get; } = map.Field("error_code");

    public MappedField Outcome { get; } = map.Field("outcome");

    public MappedField Visits { get; } = map.Field("visits");

    public MappedField Labour { get; } = map.Field("labour");

    public MappedField Updated { get; } = map.Field("updated_on");

    public MappedField PartsList { get; } = map.Field("parts_list");
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
