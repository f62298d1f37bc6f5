namespace PartsSignal.Pipeline.Config;

/// <summary>
/// Every kind of file and the columns it can give. The staged tables, the row comparison, <c>shop.schema.json</c>, the
/// proposals of <c>inspect</c> and the field reference all follow from this list; words for headers stand in
/// <c>field-words.csv</c>. A row's digest covers the columns in this order, so new ones go to the end of their kind.
/// </summary>
internal static class FieldCatalog
{
    private static readonly Dictionary<string, IReadOnlyList<Field>> ByKind = new(StringComparer.Ordinal)
    {
        ["jobs"] = Kind("jobs", repeats: true,
        [
            new("job_id", Cleaner.Id, "Number of the job; a log without numbers is numbered by what its rows say.") { Staged = [Text("job_id", required: true)], RefusesRow = true },
            new("opened_on", Cleaner.Day, "Day the customer called; a log without it is read as if each call came on the closing day.") { Essential = true, StandIn = "closed_on" },
            new("closed_on", Cleaner.Day, "Day the job was finished; blank while it is open.") { RefusesRow = true },
            new("technician", Cleaner.Word, "Who did the job."),
            new("van", Cleaner.Word, "Van that went."),
            new("customer_kind", Cleaner.CustomerKind, "Whether the customer is a household or under contract.") { Identity = false },
            new("purchased_on", Cleaner.Day, "Day the appliance was bought.") { RefusesRow = false, Identity = false },
            new("age_years", Cleaner.Years, "Age of the appliance as told by the customer.") { Unit = "years", Staged = [new("age_stated_years", ColumnType.Double)], Identity = false },
            new("complaint", Cleaner.Complaint, "What the customer said is wrong.") { Staged = [Text("complaint_text"), Word("complaint_kind", required: true)] },
            new("error_code", Cleaner.ErrorCode, "Code that the appliance displays.") { Identity = false },
            new("outcome", Cleaner.Outcome, "How the job ended.") { Staged = [Word("outcome", required: true)] },
            new("visits", Cleaner.Count, "Number of visits so far.") { Unit = "visits", RefusesRow = false },
            new("labour", Cleaner.Duration, "Working time.") { Unit = "minutes", Staged = [new("labour_minutes", ColumnType.Double)] },
            new("updated_on", Cleaner.Time, "When the row was exported or last changed.") { Identity = false },
            new("parts_list", Cleaner.PartsList, "All parts fitted, in one cell.") { Table = JobParts, Staged = PartColumns, RefusesRow = true },
            .. Appliance(identity: false),
            .. PartLineFields(JobParts),
            new("warranty", Cleaner.Flag, "Whether the job was under warranty."),
            new("status", Cleaner.Status, "Whether the job is open, closed, waiting for a part or canceled.") { Found = Found.ByWords, Identity = false },
            new("visit_reason", Cleaner.VisitReason, "What the visit was for: a failure, preventive work, an installation or an inspection.") { Found = Found.ByWords, Identity = false },
            new("age_months", Cleaner.Years, "Age of the appliance in months, as told by the customer.") { Unit = "months", Found = Found.ByHeader, Staged = [new("age_stated_months", ColumnType.Double)], Identity = false },
            new("age_days", Cleaner.Years, "Age of the appliance in days, as told by the customer.") { Unit = "days", Found = Found.ByHeader, Staged = [new("age_stated_days", ColumnType.Double)], Identity = false },
            new("fault_component", Cleaner.PartDescription, "Component that was at fault, as the shop names it, apart from the part fitted.")
            {
                Staged = [Word("fault_text"), Word("fault_component")], Found = Found.ByName, Content = ContentClass.Word, Identity = false,
            },
            new("repair_notes", Cleaner.NotKept, "What the technician found or did (never kept; only told apart from the complaint).") { Found = Found.ByName, Identity = false },
            PartSupplier,
        ]),
        ["job_parts"] = Kind("job_parts", repeats: true,
        [
            new("job_id", Cleaner.JobId, "Job on which the part was fitted.") { Staged = [Text("job_id", required: true)], Essential = true },
            .. PartLineFields(JobParts),
            new("updated_on", Cleaner.Time, "When the row was exported or last changed."),
            PartSupplier,
        ]),
        ["part_orders"] = Kind("part_orders", repeats: false,
        [
            new("order_id", Cleaner.Id, "Number of the order or invoice; a list without numbers is numbered by what its rows say.") { Staged = [Text("order_id", required: true)], RefusesRow = true },
            new("supplier", Cleaner.Supplier, "Who sold the part.") { Staged = [Text("supplier", required: true)] },
            new("ordered_on", Cleaner.Day, "Day of the order.") { Essential = true },
            new("received_on", Cleaner.Day, "Day the part came; blank while it is on order."),
            new("part", Cleaner.Code, "Part number as the supplier writes it."),
            new("other_part", Cleaner.Code, "Second part number on the line: the maker's beside the supplier's.") { Staged = [Text("other_raw"), Text("other_key")] },
            new("description", Cleaner.PartDescription, "What the part is."),
            new("quantity", Cleaner.Count, "Pieces ordered.") { Unit = "pieces", Blank = 1 },
            new("unit_cost", Cleaner.Money, "Price paid for one piece."),
            new("job_id", Cleaner.JobId, "Job that the part was ordered for."),
            new("returned_quantity", Cleaner.Count, "Pieces sent back (unknown if no column says).") { Unit = "pieces" },
            new("return_reason", Cleaner.FreeText, "Why they were sent back."),
            new("updated_on", Cleaner.Time, "When the row was exported or last changed."),
            new("returned", Cleaner.Flag, "Whether the pieces on the line were sent back (all of them, unless another column gives a number).") { Found = Found.ByName, Staged = ReturnedPieces },
            new("returned_on", Cleaner.Day, "Day the pieces were sent back (blank if they were not).") { Found = Found.ByName, RefusesRow = false, Staged = ReturnedPieces },
        ]),
        ["parts"] = Kind("parts", repeats: false,
        [
            new("part", Cleaner.Code, "Part number.") { Essential = true },
            new("description", Cleaner.PartDescription, "What the part is.") { Staged = [Text("description")] },
            new("component", Cleaner.Component, "Component that the part is."),
            new("price", Cleaner.Money, "Price of one piece."),
            new("size_class", Cleaner.SizeClass, "Space it takes in a van: small, medium, large or bulky."),
            new("returnable_days", Cleaner.Count, "Days within which it can be sent back.") { Unit = "days", RefusesRow = false },
            new("warranty_days", Cleaner.Count, "Days of warranty on the part.") { Unit = "days", RefusesRow = false },
            new("supplier", Cleaner.Supplier, "Who sells it at this price."),
        ]),
        ["supersessions"] = Kind("supersessions", repeats: false,
        [
            new("old_part", Cleaner.Code, "Part number that is no longer sold.") { Essential = true, Staged = [Text("old_raw", required: true), Text("old_key", required: true)] },
            new("new_part", Cleaner.Code, "Part number that replaces it.") { Staged = [Text("new_raw"), Text("new_key")] },
            new("effective_on", Cleaner.Day, "Day from which it is replaced."),
            new("kind", Cleaner.SupersessionKind, "Replacement, part of a kit, alternative, or no longer made.") { Staged = [Text("kind", required: true)] },
            new("quantity", Cleaner.Count, "Pieces of the new part for one old one.") { Unit = "pieces", Blank = 1 },
        ]),
        ["part_aliases"] = Kind("part_aliases", repeats: false,
        [
            new("supplier", Cleaner.Supplier, "Whose number it is.") { Staged = [Text("supplier", required: true)] },
            new("alias", Cleaner.Code, "The supplier's own number.") { Essential = true, Staged = [Text("alias_raw", required: true), Text("alias_key", required: true)] },
            new("part", Cleaner.Code, "Part number that it stands for.") { Essential = true },
        ]),
        ["fitments"] = Kind("fitments", repeats: false,
        [
            new("model", Cleaner.Model, "Model that the part fits.") { RefusesRow = true },
            new("model_family", Cleaner.Word, "Model family that the part fits.") { Content = ContentClass.Code },
            new("part", Cleaner.Code, "Part number.") { Essential = true },
            new("quantity", Cleaner.Count, "Pieces in one appliance.") { Unit = "pieces", Blank = 1 },
        ]),
        ["models"] = Kind("models", repeats: false,
        [
            new("model", Cleaner.Model, "Model number, or a printed pattern of several.") { Essential = true },
            new("model_family", Cleaner.Word, "Model family; blank: to be learned.") { Content = ContentClass.Code },
            new("appliance_type", Cleaner.ApplianceType, "Type of appliance."),
            new("brand", Cleaner.Word, "Brand."),
            new("first_made", Cleaner.FirstMade, "When the first one was built."),
            new("last_made", Cleaner.LastMade, "When the last one was built."),
        ]),
        ["units"] = Kind("units", repeats: true,
        [
            .. Appliance(identity: true),
            new("installed_on", Cleaner.ApproximateDay, "Day it went into service; a month or a year stands for its middle."),
            new("removed_on", Cleaner.ApproximateDay, "Day it was taken out of service; a month or a year stands for its middle.") { RefusesRow = false },
            new("purchased_on", Cleaner.Day, "Day the appliance was bought.") { Found = Found.ByHeader, RefusesRow = false },
            new("age_years", Cleaner.Years, "Age of the appliance on the day of the list.") { Unit = "years", Found = Found.ByHeader },
            new("age_months", Cleaner.Years, "Age of the appliance in months on the day of the list.") { Unit = "months", Found = Found.ByHeader },
            new("listed_on", Cleaner.Day, "Date of the list, used to work out ages (if missing, the last day of the data).") { Found = Found.ByHeader, RefusesRow = false },
        ]),
        ["van_counts"] = Kind("van_counts", repeats: false,
        [
            new("van", Cleaner.Word, "Van that was counted (a list without vans is the shop's shelf)."),
            new("part", Cleaner.Code, "Part number.") { Essential = true },
            new("on_hand", Cleaner.Count, "Pieces in the van.") { Essential = true, Unit = "pieces" },
            new("counted_on", Cleaner.Day, "Day of the count."),
        ]),
    };

    // Fields without which answers are lost, and what a table of the kind cannot do without: one of each group.
    private static readonly Dictionary<string, (string[] Telling, string[][] Needs)> TellingByKind = new(StringComparer.Ordinal)
    {
        ["jobs"] = (["job_id", "opened_on", "closed_on", "complaint", "outcome", "appliance_type", "model", "serial", "part", "description", "parts_list", "quantity"], [["opened_on"], ["complaint", "outcome", "technician", "model", "serial", "part", "description", "appliance_type"]]),
        ["job_parts"] = (["job_id", "part", "description", "quantity"], [["job_id"], ["part", "description"]]),
        ["part_orders"] = (["order_id", "supplier", "ordered_on", "received_on", "part", "quantity", "unit_cost"], [["order_id", "supplier", "received_on"], ["ordered_on", "received_on"], ["part", "other_part", "description"]]),
        ["parts"] = (["part", "description", "price", "supplier"], [["part"], ["price", "description", "supplier"]]),
        ["supersessions"] = (["old_part", "new_part"], [["old_part"], ["new_part"]]),
        ["part_aliases"] = (["supplier", "alias", "part"], [["alias"], ["part"]]),
        ["fitments"] = (["model", "model_family", "part"], [["part"], ["model", "model_family"]]),
        ["models"] = (["model", "model_family", "appliance_type", "brand", "first_made"], [["model"], ["model_family", "first_made", "appliance_type", "brand"]]),
        ["units"] = (["serial", "model", "appliance_type", "made_on", "installed_on", "removed_on"], [["serial"], ["installed_on", "removed_on", "made_on", "model", "appliance_type"]]),
        ["van_counts"] = (["van", "part", "on_hand"], [["part"], ["on_hand"]]),
    };

    private const string JobParts = "staged_job_parts";

    // What a staged table holds beside its fields.
    private static readonly Dictionary<string, IReadOnlyList<StagedColumnSpec>> Further = new(StringComparer.Ordinal)
    {
        // the shop's own word for an outcome that no table knows
        ["staged_jobs"] = [Word("outcome_text")],
        [JobParts] = [new("group_no", ColumnType.Int, Required: true), new("with_job_row", ColumnType.Flag, Required: true)],
    };

    private static IReadOnlyList<StagedColumnSpec> PartColumns => [Word("part_raw"), Word("part_key"), new("quantity", ColumnType.Int, Required: true)];

    private static IReadOnlyList<StagedColumnSpec> ReturnedPieces => [new("returned_quantity", ColumnType.Int)];

    private static Field PartSupplier => new("supplier", Cleaner.Supplier, "Who supplied the part that was fitted.") { Table = JobParts, PartLine = true, Found = Found.ByName };

    /// <summary>Names of the kinds.</summary>
    public static IReadOnlyList<string> Kinds { get; } = [.. ByKind.Keys];

    /// <summary>Every field of every kind.</summary>
    public static IReadOnlyList<Field> All { get; } = [.. ByKind.Values.SelectMany(f => f)];

    /// <summary>Names of the fields of a part line.</summary>
    public static IReadOnlyList<string> PartLine { get; } = [.. ByKind["jobs"].Where(f => f.PartLine).Select(f => f.Name)];

    /// <summary>Names of the staged tables.</summary>
    public static IReadOnlyList<string> Tables { get; } = [.. All.Select(f => f.Table).Distinct(StringComparer.Ordinal)];

    /// <summary>Fields of a kind, or null if there is no such kind.</summary>
    public static IReadOnlyList<Field>? Find(string kind) => ByKind.GetValueOrDefault(kind);

    /// <summary>Fields of a kind.</summary>
    public static IReadOnlyList<Field> Of(string kind) => ByKind[kind];

    /// <summary>A field of a kind.</summary>
    public static Field Get(string kind, string name) => ByKind[kind].First(f => f.Name == name);

    /// <summary>Names of the fields of a kind, or null if there is no such kind.</summary>
    public static IReadOnlyList<string>? Names(string kind) => Find(kind)?.Select(f => f.Name).ToList();

    /// <summary>Fields of a kind without which answers are lost.</summary>
    public static IReadOnlyList<string> Telling(string kind) => TellingByKind[kind].Telling;

    /// <summary>Groups of fields of a kind, of each of which a table of the kind gives one at least.</summary>
    public static IReadOnlyList<string[]> Needs(string kind) => TellingByKind[kind].Needs;

    /// <summary>Columns of a staged table, without those that say where a row is from.</summary>
    public static IReadOnlyList<StagedColumnSpec> Columns(string table) =>
        [.. All.Where(f => f.Table == table).SelectMany(f => f.Staged).Concat(Further.GetValueOrDefault(table, [])).DistinctBy(c => c.Name)];

    /// <summary>Staged columns in which rows of one job must agree to be the same telling of it.</summary>
    public static IReadOnlyList<string> IdentityColumns(string kind) =>
        [.. ByKind[kind].Where(f => f.Identity && f.Table == TableOf(kind)).SelectMany(f => f.Staged).Select(c => c.Name).Distinct(StringComparer.Ordinal)];

    private static string TableOf(string kind) => "staged_" + kind;

    private static IReadOnlyList<Field> Kind(string kind, bool repeats, IReadOnlyList<Field> fields) => [.. fields.Select(f => f with
    {
        Kind = kind,
        Table = f.Table.Length > 0 ? f.Table : TableOf(kind),
        Staged = f.Staged.Count > 0 ? f.Staged : Usual(f, repeats ? ColumnType.Word : ColumnType.Text),
        Personal = f.Personal || f.Cleaner is Cleaner.Personal or Cleaner.Phone or Cleaner.Email,
    })];

    // What the cleaner makes, under the field's own name.
    private static IReadOnlyList<StagedColumnSpec> Usual(Field field, ColumnType words) => field.Cleaner switch
    {
        Cleaner.Code => [new(field.Name + "_raw", words, field.Essential), new(field.Name + "_key", words, field.Essential)],
        Cleaner.Model => [new("model_raw", words, field.Essential), new("model_key", words, field.Essential), new("model_pattern", words)],
        Cleaner.PartDescription => [new(field.Name, words), new("component", words)],
        Cleaner.BuildDate => [new(field.Name + "_from", ColumnType.Day), new(field.Name + "_to", ColumnType.Day)],
        Cleaner.Day or Cleaner.ApproximateDay or Cleaner.FirstMade or Cleaner.LastMade => [new(field.Name, ColumnType.Day, field.Essential)],
        Cleaner.Time => [new(field.Name, ColumnType.Time)],
        Cleaner.Money => [new(field.Name, ColumnType.Money)],
        Cleaner.Count => [new(field.Name, ColumnType.Int, field.Essential || field.Blank is not null)],
        Cleaner.Years or Cleaner.Duration => [new(field.Name, ColumnType.Double)],
        Cleaner.Flag => [new(field.Name, ColumnType.Flag)],
        Cleaner.Personal or Cleaner.Phone => [new("place_key", ColumnType.Identifier)],
        Cleaner.Email or Cleaner.NotKept => [],
        _ => [new(field.Name, words, field.Essential)],
    };

    private static StagedColumnSpec Text(string name, bool required = false) => new(name, ColumnType.Text, required);

    private static StagedColumnSpec Word(string name, bool required = false) => new(name, ColumnType.Word, required);

    private static IReadOnlyList<Field> Appliance(bool identity) =>
    [
        new("serial", Cleaner.Serial, "Serial number of the appliance.")
        {
            Staged = [new("serial_key", ColumnType.Identifier), new("serial_is_short", ColumnType.Flag), Word("serial_candidates"), Word("serial_fault")], Identity = identity,
        },
        new("customer_name", Cleaner.Personal, "Name of the customer.") { Identity = identity },
        new("phone", Cleaner.Phone, "Phone number of the customer.") { Identity = identity },
        new("address", Cleaner.Personal, "Where the appliance stands.") { Content = ContentClass.Text, Identity = identity },
        new("email", Cleaner.Email, "E-mail address of the customer.") { Identity = identity },
        new("appliance_type", Cleaner.ApplianceType, "Type of appliance.") { Identity = identity },
        new("brand", Cleaner.Word, "Brand.") { Identity = identity },
        new("model", Cleaner.Code, "Model number.") { RefusesRow = false, Identity = identity },
        new("made_on", Cleaner.BuildDate, "When the appliance was built.") { Identity = identity },
    ];

    private static IReadOnlyList<Field> PartLineFields(string table) =>
    [
        new("part", Cleaner.Code, "Number of a part that was fitted.") { Table = table, PartLine = true },
        new("description", Cleaner.PartDescription, "What the part is.") { Table = table, PartLine = true },
        new("quantity", Cleaner.Count, "Pieces fitted.") { Table = table, PartLine = true, Unit = "pieces", Blank = 1 },
        new("price", Cleaner.Money, "Price charged for one piece.") { Table = table, PartLine = true, Staged = [new("unit_price", ColumnType.Money)] },
        new("from_van", Cleaner.Flag, "Whether the part came from the van.") { Table = table, PartLine = true },
    ];
}
