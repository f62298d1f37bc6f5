using System.Collections.Concurrent;
using System.Data.Common;
using System.Globalization;
using System.Linq.Expressions;
using System.Numerics;
using System.Reflection;
using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Analysis.Sql;

/// <summary>
/// Turns the rows of a result into records by column name; the mirror of <see cref="ResultTable"/>. A constructor
/// parameter or settable property takes the column of its own name in snake case. A parameter that is a record takes its
/// own columns from the same row. An <see cref="Estimate"/> named <c>Share</c> takes <c>share</c>, <c>lower</c>,
/// <c>upper</c> and <c>missing</c>, or <c>share_lower</c> and so on where a row holds several. Enum members are spelled
/// in snake case. Columns that no parameter asks for are ignored.
/// </summary>
/// <typeparam name="T">A record, or a plain value (text, number, day) for a result of one column.</typeparam>
internal sealed class RowReader<T>
{
    private static readonly RowPlan<T> Plan = new();

    private readonly RowColumn[] _columns;

    /// <summary>Finds the columns and checks their types, before any row is read.</summary>
    /// <param name="reader">The open result.</param>
    /// <param name="source">Name of the table or query, for messages.</param>
    /// <exception cref="TableShapeException">Columns are missing or of another type; the message lists all of them.</exception>
    public RowReader(DbDataReader reader, string source) => _columns = Plan.Bind(reader, source);

    /// <summary>The current row.</summary>
    /// <exception cref="InvalidOperationException">A value is null, or out of range, where the record does not allow it.</exception>
    public T Current() => Plan.Create(_columns);
}

/// <summary>Names the column that a parameter or property is read from, where it is not its own name in snake case.</summary>
/// <param name="name">The column.</param>
[AttributeUsage(AttributeTargets.Parameter | AttributeTargets.Property)]
public sealed class ColumnAttribute(string name) : Attribute
{
    /// <summary>The column.</summary>
    public string Name => name;
}

/// <summary>What a record needs from a row, and the compiled code that makes it.</summary>
internal sealed class RowPlan<T>
{
    private readonly List<ColumnNeed> _needs = [];

    public RowPlan()
    {
        ParameterExpression columns = Expression.Parameter(typeof(RowColumn[]));
        Expression body = RowColumn.IsValue(typeof(T)) ? Value(columns, typeof(T), []) : Record(columns, typeof(T));
        Create = Expression.Lambda<Func<RowColumn[], T>>(body, columns).Compile();
    }

    public Func<RowColumn[], T> Create { get; }

    public RowColumn[] Bind(DbDataReader reader, string source)
    {
        var ordinals = new Dictionary<string, int>(StringComparer.Ordinal);
        for (int i = 0; i < reader.FieldCount; i++)
        {
            ordinals.TryAdd(reader.GetName(i), i);
        }

        var faults = new List<string>();
        var bound = new RowColumn[_needs.Count];
        for (int i = 0; i < bound.Length; i++)
        {
            ColumnNeed need = _needs[i];
            string? name = need.Names.Length == 0 ? reader.GetName(0) : need.Names.FirstOrDefault(ordinals.ContainsKey);
            if (name is null)
            {
                bound[i] = new RowColumn(null, -1, $"{source}: column {need.Names[0]} of {typeof(T).Name}");
                if (need.Required)
                {
                    faults.Add($"there is no column {need.Names[0]}");
                }
            }
            else
            {
                int ordinal = need.Names.Length == 0 ? 0 : ordinals[name];
                bound[i] = new RowColumn(reader, ordinal, $"{source}: column {name} of {typeof(T).Name}");
                if (!RowColumn.Fits(reader.GetFieldType(ordinal), need.Type))
                {
                    faults.Add($"column {name} is {reader.GetDataTypeName(ordinal)}, not {(Nullable.GetUnderlyingType(need.Type) ?? need.Type).Name}");
                }
            }
        }

        return faults.Count == 0 ? bound : throw new TableShapeException($"{source} cannot be read as {typeof(T).Name}: {string.Join("; ", faults)}.");
    }

    private Expression Record(ParameterExpression columns, Type type)
    {
        ConstructorInfo constructor = type.GetConstructors()
            .Where(c => c.GetParameters() is not [{ } only] || only.ParameterType != type)
            .MaxBy(c => c.GetParameters().Length)
            ?? throw new ArgumentException($"{type.Name} has no public constructor.");
        var nulls = new NullabilityInfoContext();
        ParameterInfo[] parameters = constructor.GetParameters();
        NewExpression create = Expression.New(constructor, parameters.Select(p => Member(columns, p.ParameterType, Name(p, p.Name!), nulls.Create(p).WriteState)));
        var taken = parameters.Select(p => p.Name).ToHashSet(StringComparer.OrdinalIgnoreCase);
        return Expression.MemberInit(create, type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(p => p.SetMethod is { IsPublic: true } && p.GetIndexParameters().Length == 0 && !taken.Contains(p.Name))
            .Select(p => Expression.Bind(p, Member(columns, p.PropertyType, Name(p, p.Name), nulls.Create(p).WriteState))));
    }

    private Expression Member(ParameterExpression columns, Type type, string column, NullabilityState state)
    {
        if (type == typeof(Estimate))
        {
            string stem = column.LastIndexOf('_') is > 0 and int cut ? column[..cut] : column;
            Expression Part(string part, Type wanted, bool required) => Value(columns, wanted, [$"{column}_{part}", $"{stem}_{part}", part], required);
            return Expression.Call(
                typeof(RowColumn), nameof(RowColumn.Estimate), [],
                Value(columns, typeof(double?), [column]), Part("lower", typeof(double?), true), Part("upper", typeof(double?), true), Part("missing", typeof(string), false));
        }

        return !RowColumn.IsValue(type) ? Record(columns, type)
            : type.IsValueType || state != NullabilityState.NotNull ? Value(columns, type, [column])
            : Expression.Call(typeof(RowColumn), nameof(RowColumn.NotNull), [type], Value(columns, type, [column]), Column(columns, _needs.Count - 1));
    }

    private static string Name(ICustomAttributeProvider member, string name) =>
        member.GetCustomAttributes(typeof(ColumnAttribute), inherit: false) is [ColumnAttribute column] ? column.Name : ResultColumn.SnakeCase(name);

    private Expression Value(ParameterExpression columns, Type type, string[] names, bool required = true)
    {
        _needs.Add(new ColumnNeed(names, type, required));
        Expression column = Column(columns, _needs.Count - 1);
        return Nullable.GetUnderlyingType(type) is { } inner
            ? Expression.Call(column, nameof(RowColumn.ReadOrNull), [inner])
            : Expression.Call(column, type.IsValueType ? nameof(RowColumn.Read) : nameof(RowColumn.ReadReference), [type]);
    }

    private static BinaryExpression Column(ParameterExpression columns, int at) => Expression.ArrayIndex(columns, Expression.Constant(at));
}

/// <summary>A column that a record asks for.</summary>
/// <param name="Names">Names it may go by, the first choice first; none: the only column of the result.</param>
/// <param name="Type">Type of the value.</param>
/// <param name="Required">False: a result without it gives null.</param>
internal sealed record ColumnNeed(string[] Names, Type Type, bool Required);

/// <summary>One bound column of an open result.</summary>
internal sealed class RowColumn(DbDataReader? reader, int ordinal, string place)
{
    private static readonly Type[] Integers =
        [typeof(sbyte), typeof(byte), typeof(short), typeof(ushort), typeof(int), typeof(uint), typeof(long), typeof(ulong), typeof(BigInteger)];

    private const int PoolSize = 1024;

    private readonly Type? _type = reader?.GetFieldType(ordinal);
    private readonly string?[] _pool = new string?[PoolSize];

    /// <summary>True when a value of the type fills one column.</summary>
    public static bool IsValue(Type type)
    {
        Type plain = Nullable.GetUnderlyingType(type) ?? type;
        return plain.IsEnum || plain == typeof(string) || plain == typeof(bool) || plain == typeof(int) || plain == typeof(long)
            || plain == typeof(double) || plain == typeof(decimal) || plain == typeof(DateOnly) || plain == typeof(DateTime) || Item(plain) is not null;
    }

    /// <summary>True when a column of one type can be read as another without loss of kind: a number is never text.</summary>
    public static bool Fits(Type column, Type wanted)
    {
        Type plain = Nullable.GetUnderlyingType(wanted) ?? wanted;
        return plain == column
            || plain.IsEnum && column == typeof(string)
            || (plain == typeof(int) || plain == typeof(long)) && Integers.Contains(column)
            || plain == typeof(double) && (Integers.Contains(column) || column == typeof(float) || column == typeof(decimal))
            || plain == typeof(decimal) && Integers.Contains(column)
            || plain == typeof(DateOnly) && column == typeof(DateTime)
            || Item(plain) is { } item && Item(column) == item;
    }

    public TValue Read<TValue>()
        where TValue : struct => reader!.IsDBNull(ordinal) ? throw Null() : Converted<TValue>();

    public TValue? ReadOrNull<TValue>()
        where TValue : struct => reader is null || reader.IsDBNull(ordinal) ? null : Converted<TValue>();

    public TValue? ReadReference<TValue>()
        where TValue : class
    {
        if (reader is null || reader.IsDBNull(ordinal))
        {
            return null;
        }

        return typeof(TValue) == typeof(string) ? (TValue)(object)Pooled(reader.GetString(ordinal)) : (TValue)reader.GetValue(ordinal);
    }

    public static TValue NotNull<TValue>(TValue? value, RowColumn column)
        where TValue : class => value ?? throw column.Null();

    public static Estimate Estimate(double? value, double? lower, double? upper, string? missing) =>
        value is { } known ? Statistics.Estimate.From(known, lower, upper) : Statistics.Estimate.None(missing ?? "not known");

    // Most text columns repeat a few words; a result of a million rows should not hold a million copies of each.
    private string Pooled(string text)
    {
        ref string? kept = ref _pool[text.GetHashCode() & (PoolSize - 1)];
        return kept == text ? kept : kept = text;
    }

    private TValue Converted<TValue>()
        where TValue : struct
    {
        if (_type == typeof(TValue))
        {
            return reader!.GetFieldValue<TValue>(ordinal);
        }

        object value = reader!.GetValue(ordinal);
        try
        {
            return (TValue)(typeof(TValue).IsEnum ? EnumNames.Parse(typeof(TValue), (string)value)
                : value is BigInteger big ? Convert.ChangeType(typeof(TValue) == typeof(double) ? (double)big : (long)big, typeof(TValue), CultureInfo.InvariantCulture)
                : value is DateTime time ? DateOnly.FromDateTime(time)
                : Convert.ChangeType(value, typeof(TValue), CultureInfo.InvariantCulture));
        }
        catch (Exception fault) when (fault is OverflowException or KeyNotFoundException)
        {
            throw new InvalidOperationException($"{place}: '{Convert.ToString(value, CultureInfo.InvariantCulture)}' is no {typeof(TValue).Name}.", fault);
        }
    }

    private InvalidOperationException Null() => new($"{place} is null.");

    private static Type? Item(Type type) => type.IsGenericType
        && (type.GetGenericTypeDefinition() == typeof(IReadOnlyList<>) || type.GetGenericTypeDefinition() == typeof(List<>)) ? type.GetGenericArguments()[0] : null;

    private static class EnumNames
    {
        private static readonly ConcurrentDictionary<Type, Dictionary<string, object>> Known = new();

        public static object Parse(Type type, string text) => Known.GetOrAdd(
            type, static t => Enum.GetValues(t).Cast<object>().ToDictionary(v => ResultColumn.SnakeCase(v.ToString()!), StringComparer.Ordinal))[text];
    }
}
