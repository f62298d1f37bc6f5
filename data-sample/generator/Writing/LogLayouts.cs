namespace PartsSignal.SampleShop.Writing;

/// <summary>The job logs of the six years: two of the first software, four of the second as its settings changed.</summary>
internal static class LogLayouts
{
    private const string British = "dd/MM/yyyy";
    private const string Iso = "yyyy-MM-dd";

    private static readonly (string, string)[] OldGroups =
    [
        ("part", "Part {0}"), ("quantity", "Qty {0}"), ("description", "Part text {0}"), ("price", "Price {0}"), ("from_van", "From {0}"),
    ];

    private static readonly (string, string)[] NewGroups =
    [
        ("part", "Part{0} No"), ("quantity", "Part{0} Qty"), ("description", "Part{0} Desc"), ("price", "Part{0} Unit"), ("from_van", "Part{0} Van stock"),
    ];

    private static readonly (string, string)[] OnePart =
    [
        ("part", "Part no"), ("description", "Part description"), ("quantity", "Pieces"), ("price", "Charged"), ("from_van", "Off van"),
    ];

    /// <summary>Layout of the log that holds jobs opened on a day of the year.</summary>
    public static IReadOnlyDictionary<int, LogLayout> ByYear { get; } = new Dictionary<int, LogLayout>
    {
        [2021] = new()
        {
            File = "jobs-2021.csv",
            Encoding = DelimitedFile.Windows,
            EncodingName = "windows-1252",
            Separator = ';',
            DateFormat = British,
            DecimalComma = true,
            Words = LogWords.Old,
            Parts = PartsHeld.InGroups,
            PartColumns = OldGroups,
            NotesAbove = ["Workshop diary, all vans", "printed with everything switched on", ""],
            Columns = Old(British, [("Job", "job_id"), ("Date in", "opened_on"), ("Date out", "closed_on"), ("Man", "technician"), ("Van", "van"),
                ("Customer", "customer_name"), ("Tel", "phone"), ("Address", "address"), ("Account", "customer_kind"), ("Appliance", "appliance_type"),
                ("Make", "brand"), ("Model", "model"), ("Serial No.", "serial"), ("Age about", "age_years"), ("Fault reported", "complaint"),
                ("Result", "outcome"), ("Visits", "visits"), ("Min.", "labour")]),
        },
        [2022] = new()
        {
            File = "jobs-2022.csv",
            Encoding = DelimitedFile.Windows,
            EncodingName = "windows-1252",
            Separator = ';',
            DateFormat = British,
            DecimalComma = true,
            Words = LogWords.Old,
            Parts = PartsHeld.InGroups,
            PartColumns = OldGroups,
            Columns = Old(British, [("Job number", "job_id"), ("Call date", "opened_on"), ("Finished", "closed_on"), ("Technician", "technician"), ("Van", "van"),
                ("Name", "customer_name"), ("Phone", "phone"), ("Street", "address"), ("Mail", "email"), ("Account", "customer_kind"), ("Machine", "appliance_type"),
                ("Make", "brand"), ("Model number", "model"), ("Serial", "serial"), ("Bought", "purchased_on"), ("Age about", "age_years"),
                ("Customer says", "complaint"), ("Code", "error_code"), ("Result", "outcome"), ("Visits", "visits"), ("Minutes", "labour")]),
        },
        [2023] = new()
        {
            File = "jobs-2023.csv",
            Encoding = DelimitedFile.Utf8WithMark,
            EncodingName = "utf-8",
            Separator = ',',
            DateFormat = Iso,
            Words = LogWords.New,
            Parts = PartsHeld.InRows,
            PartColumns = OnePart,
            Columns = New(Iso, true),
        },
        [2024] = new()
        {
            File = "jobs-2024.tsv",
            Encoding = DelimitedFile.Utf8,
            EncodingName = "utf-8",
            Separator = '\t',
            DateFormat = Iso,
            Words = LogWords.New,
            Parts = PartsHeld.InOneCell,
            PartColumns = [("parts_list", "Parts used")],
            Columns = New(Iso, true),
        },
        [2025] = new()
        {
            File = "jobs-2025.csv",
            Encoding = DelimitedFile.Utf16WithMark,
            EncodingName = "utf-16",
            Separator = ',',
            DateFormat = "MM/dd/yyyy",
            Words = LogWords.New,
            Parts = PartsHeld.Apart,
            Columns = New("MM/dd/yyyy", false),
        },
        [2026] = new()
        {
            File = "jobs-2026.csv",
            Encoding = DelimitedFile.Utf8,
            EncodingName = "utf-8",
            Separator = ',',
            DateFormat = Iso,
            Words = LogWords.New,
            Parts = PartsHeld.InGroups,
            PartColumns = NewGroups,
            NotesBelow = ["", "End of list, {0} jobs", "Open jobs have no finish date"],
            Columns = New(Iso, true),
        },
    };

    /// <summary>The month that was exported twice: this earlier export, and again within its year.</summary>
    public static LogLayout FirstExport { get; } = ByYear[2024] with { File = "jobs-2024-03.tsv" };

    /// <summary>The file of parts of the year that keeps them apart.</summary>
    public const string PartsApartFile = "job-parts-2025.csv";

    private static List<LogColumn> Old(string dates, IEnumerable<(string Header, string Field)> columns) =>
        [.. columns.Select(c => new LogColumn(c.Header, c.Field, Show(c.Field, dates, LogWords.Old)))];

    private static List<LogColumn> New(string dates, bool stamped)
    {
        var columns = new List<(string Header, string Field)>
        {
            ("Ref", "job_id"), ("Opened", "opened_on"), ("Finished", "closed_on"), ("Status", "outcome"), ("Tech", "technician"), ("Vehicle", "van"),
            ("Client", "customer_name"), ("Client phone", "phone"), ("Client email", "email"), ("Client address", "address"), ("Client kind", "customer_kind"),
            ("Product", "appliance_type"), ("Brand", "brand"), ("Model no", "model"), ("Serial no", "serial"), ("Purchase date", "purchased_on"),
            ("Problem", "complaint"), ("Display code", "error_code"), ("Visit count", "visits"), ("Labour min", "labour"),
        };
        if (stamped)
        {
            columns.Add(("Last change", "updated_on"));
        }

        return [.. columns.Select(c => new LogColumn(c.Header, c.Field, Show(c.Field, dates, LogWords.New)))];
    }

    private static Func<JobRow, string> Show(string field, string dates, LogWords words) => field switch
    {
        "job_id" => r => r.Job.Id,
        "opened_on" => r => JobRow.DayText(r.Job.OpenedDay, dates),
        "closed_on" => r => JobRow.DayText(r.ClosedDay, dates),
        "technician" => r => r.Technician,
        "van" => r => r.Van,
        "customer_name" => r => r.Job.Unit.Owner.Name,
        "phone" => r => r.Job.Unit.Owner.Phone,
        "address" => r => r.Job.Unit.Owner.Address,
        "email" => r => r.Job.Unit.Owner.Email,
        "customer_kind" => r => r.Job.Unit.Owner.IsContract ? "contract" : "private",
        "appliance_type" => r => words.Types[r.Job.Unit.Family.Type],
        "brand" => r => r.Job.Note.BrandTyped,
        "model" => r => r.Job.Note.ModelTyped,
        "serial" => r => r.Job.Note.SerialTyped,
        "purchased_on" => r => JobRow.DayText(r.Job.Note.PurchasedDay, dates),
        "age_years" => r => r.StatedAge,
        "complaint" => r => r.Job.Note.Text,
        "error_code" => r => r.Job.Note.ErrorCode,
        "outcome" => r => words.Outcomes[r.State],
        "visits" => r => r.Visits,
        "labour" => r => r.Labour,
        "updated_on" => r => JobRow.DayText(r.ChangedDay, dates),
        _ => throw new ArgumentException($"no such field {field}", nameof(field)),
    };
}
