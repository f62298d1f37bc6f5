using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Staging;

/// <summary>Stages the fields of a kind that need nothing but their own cell, each as the catalog says. A new plain field needs no code.</summary>
internal sealed class PlainFields
{
    private const string UnknownSupplier = "unknown";
    private const string OtherAppliance = "other";

    // More is no word for an outcome but a note.
    private const int LongestOutcome = 60;

    private const double MostYears = 100;
    private const double MonthsPerYear = 12;
    private const double DaysPerYear = 365.25;

    // Words of people and places are more varied than others.
    private const int WordBits = 14;
    private readonly PlainField[] _refusing;
    private readonly PlainField[] _others;

    /// <summary>Prepares fields.</summary>
    /// <param name="fields">The fields, in the order in which they are read.</param>
    /// <param name="target">The map and what rows are made with.</param>
    /// <param name="table">Where the values go.</param>
    public PlainFields(IReadOnlyList<Field> fields, StageTarget target, StagedTable table)
    {
        _refusing = [.. fields.Where(f => f.RefusesRow).Select(f => Make(f, target, table))];
        _others = [.. fields.Where(f => !f.RefusesRow).Select(f => Make(f, target, table))];
    }

    /// <summary>Stages the fields that may refuse the row; stops at the first fault.</summary>
    public void SetRefusing(MappedRow row, int at) => Set(_refusing, row, at);

    /// <summary>Stages the others.</summary>
    public void SetOthers(MappedRow row, int at) => Set(_others, row, at);

    /// <summary>Reads a type of appliance by the table of words; a name it does not know is a type of the shop's own.</summary>
    public static string? ApplianceType(MappedRow row, MappedField field, ApplianceNames appliances, PersonalCells personal)
    {
        string? typed = row.Word(field);
        return typed is null ? null
            : appliances.Find(typed) ?? (personal.Word(row, field, typed) is { } name ? ApplianceNames.OwnName(name) : null) ?? OtherAppliance;
    }

    private static void Set(PlainField[] fields, MappedRow row, int at)
    {
        foreach (PlainField field in fields)
        {
            field.Set(row, at);
            if (row.Fault is not null)
            {
                return;
            }
        }
    }

    private static PlainField Make(Field field, StageTarget target, StagedTable table)
    {
        MappedField source = target.Map.Field(field.Name);
        WordSets words = target.Tools.Words;
        PersonalCells personal = target.Personal;
        ComponentClassifier components = words.Components.For(personal.Words.Languages);
        bool lesser = !field.RefusesRow, needed = field.Essential;
        string name = field.Staged[0].Name;
        double most = MostYears * (field.Unit switch { "months" => MonthsPerYear, "days" => DaysPerYear, _ => 1 });
        return field.Cleaner switch
        {
            Cleaner.Word => Text((row, f) => NeededText(row, f, personal.Word(row, f, row.Word(f)))),
            Cleaner.Id => Text((row, f) => personal.Id(needed ? row.Needed(f) : row.Word(f))),
            Cleaner.JobId => Text((row, f) => personal.Id(needed ? row.Needed(f) : row.Word(f)) is { } job ? target.Map.JobPrefix + job : null),
            Cleaner.Supplier => Text((row, f) => target.Map.Supplier ?? personal.Word(row, f, row.Word(f)) ?? (field.Staged[0].Required ? UnknownSupplier : null)),
            Cleaner.FreeText => Text((row, f) => personal.Text(row.Text(f))),
            Cleaner.ApplianceType => Text((row, f) => ApplianceType(row, f, words.Appliances, personal)),
            Cleaner.Outcome => Outcomes(table.Setter(name), table.Setter("outcome_text")),
            Cleaner.VisitReason => Text((row, f) => row.Known(f, words.Reasons)),
            Cleaner.CustomerKind => Text(static (row, f) => CustomerKindText.Read(row.Span(f))),
            Cleaner.SizeClass => Text(static (row, f) => row.SizeClass(f)),
            Cleaner.Code => Codes(ReadCode),
            Cleaner.Model => Codes(ReadCode, table.Setter(field.Staged[2].Name)),
            Cleaner.PartDescription when field.Staged.Count == 1 => Text((row, f) => personal.Text(row.Word(f))),
            Cleaner.PartDescription => Description(table.Setter(name), table.Setter(field.Staged[1].Name)),
            Cleaner.Day when needed => Value<DateOnly>(static (row, f) => row.NeededDay(f)),
            Cleaner.Day => Value<DateOnly>((row, f) => row.Day(f, lesser)),
            Cleaner.ApproximateDay => Value<DateOnly>((row, f) => row.ApproximateDay(f, lesser)),
            Cleaner.FirstMade => Value<DateOnly>(static (row, f) => row.Made(f)?.From),
            Cleaner.LastMade => Value<DateOnly>(static (row, f) => row.Made(f)?.To),
            Cleaner.BuildDate => Interval(table.Value<DateOnly>(name), table.Value<DateOnly>(field.Staged[1].Name)),
            Cleaner.Time => Value<DateTime>(static (row, f) => row.Time(f)),
            Cleaner.Money => Value<decimal>(static (row, f) => row.Money(f)),
            Cleaner.Count => Value((row, f) => Count(row, f, lesser, field)),
            Cleaner.Years => Value<double>((row, f) => row.Age(f, most)),
            Cleaner.Duration => Value<double>(static (row, f) => row.Duration(f)),
            Cleaner.Flag => Value<bool>(static (row, f) => row.Flag(f)),
            _ => throw new InvalidOperationException($"{field.Kind}.{field.Name} is read with other fields; its stager must claim it."),
        };

        PlainField Text(Func<MappedRow, MappedField, string?> read) => new PlainField<string?>(new(source, read, WordBits), table.Setter(name));

        PlainField Value<T>(Func<MappedRow, MappedField, T?> read)
            where T : struct => new PlainField<T?>(new(source, read), table.Value<T>(name).Set);

        PlainField Interval(ValueColumn<DateOnly> from, ValueColumn<DateOnly> to) =>
            new PlainField<(DateOnly From, DateOnly To)?>(new(source, static (row, f) => row.Made(f)), (at, made) =>
            {
                from.Set(at, made?.From);
                to.Set(at, made?.To);
            });

        PlainField Outcomes(Action<int, string?> outcome, Action<int, string?> own) =>
            new PlainField<(string Outcome, string? Own)>(new(source, (row, f) => row.Outcome(f, words) is var read && read.Own is { Length: <= LongestOutcome } typed ? (read.Outcome, personal.Word(row, f, typed)) : (read.Outcome, null)), (at, read) =>
            {
                outcome(at, read.Outcome);
                own(at, read.Own);
            });

        PlainField Description(Action<int, string?> text, Action<int, string?> component) =>
            new PlainField<PartWords>(new(source, (row, f) => PartWords.Parse(personal.Text(row.Word(f)), components)), (at, description) =>
            {
                text(at, description.Text);
                component(at, description.Component);
            });

        PlainField Codes(Func<MappedRow, MappedField, bool, CodeText> read, Action<int, string?>? pattern = null)
        {
            (Action<int, string?> raw, Action<int, string?> key) = (table.Setter(name), table.Setter(field.Staged[1].Name));
            return new PlainField<CodeText>(new(source, (row, f) => Needed(row, f, read(row, f, lesser))), (at, code) =>
            {
                raw(at, code.Raw);
                key(at, needed ? code.Key ?? "" : code.Key);
                pattern?.Invoke(at, ModelWildcard.Pattern(code.Raw));
            });
        }

        CodeText ReadCode(MappedRow row, MappedField f, bool lesser)
        {
            string? cell = row.Code(f, lesser);
            return CodeText.Parse(personal.Code(row, f, field.Cleaner == Cleaner.Code && NumberAndNameText.TryRead(cell, out string number, out _) ? number : cell));
        }

        string? NeededText(MappedRow row, MappedField f, string? value)
        {
            if (needed && value is null)
            {
                row.Missing(f);
            }

            return value;
        }

        CodeText Needed(MappedRow row, MappedField f, CodeText code)
        {
            if (needed && code.Raw is null)
            {
                row.Missing(f);
            }

            return code;
        }
    }

    private static int? Count(MappedRow row, MappedField source, bool lesser, Field field)
    {
        int? count = row.Quantity(source, lesser);
        if (count is null && field.Essential)
        {
            row.Missing(source);
        }

        return count ?? field.Blank;
    }

    private abstract class PlainField
    {
        public abstract void Set(MappedRow row, int at);
    }

    private sealed class PlainField<T>(CachedField<T> source, Action<int, T> set) : PlainField
    {
        public override void Set(MappedRow row, int at) => set(at, source.Read(row));
    }
}
