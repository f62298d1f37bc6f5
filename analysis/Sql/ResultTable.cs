using System.Linq.Expressions;
using System.Reflection;
using System.Text;
using DuckDB.NET.Data;

namespace PartsSignal.Analysis.Sql;

/// <summary>
/// Puts records into a DuckDB table named as the result: one column per property, the name in snake case.
/// Supported types: string, bool, int, long, double, decimal (as decimal(12,2)), DateOnly and their nullable forms.
/// </summary>
public static class ResultTable
{
    /// <summary>Creates (or replaces) the table and fills it in the order given.</summary>
    /// <exception cref="ArgumentException">A value is NaN or infinite: what cannot be estimated is null with a reason.</exception>
    public static void Write<T>(Database database, string name, IEnumerable<T> rows)
    {
        ResultColumn<T>[] columns = ResultColumn<T>.All;
        var create = new StringBuilder("create or replace table ").Append(Database.Quote(name)).Append(" (");
        create.AppendJoin(", ", columns.Select(c => Database.Quote(c.Name) + " " + c.SqlType)).Append(')');
        database.Execute(create.ToString());
        using DuckDBAppender appender = database.Connection.CreateAppender(name);
        foreach (T row in rows)
        {
            IDuckDBAppenderRow line = appender.CreateRow();
            foreach (ResultColumn<T> column in columns)
            {
                column.Append(line, row);
            }

            line.EndRow();
        }
    }
}

internal sealed record ResultColumn<T>(string Name, string SqlType, Func<T, object?> Value)
{
    public static readonly ResultColumn<T>[] All =
        [.. typeof(T).GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.GetIndexParameters().Length == 0 && p.Name != "EqualityContract").Select(Make)];

    public void Append(IDuckDBAppenderRow line, T row)
    {
        switch (Value(row))
        {
            case null: line.AppendNullValue(); break;
            case string text: line.AppendValue(text); break;
            case bool flag: line.AppendValue(flag); break;
            case int whole: line.AppendValue(whole); break;
            case long whole: line.AppendValue(whole); break;
            case decimal money: line.AppendValue(money); break;
            case DateOnly day: line.AppendValue(day); break;
            case double number when double.IsFinite(number): line.AppendValue(number); break;
            case double: throw new ArgumentException($"Column {Name} holds NaN or infinity.", nameof(row));
            case Enum choice: line.AppendValue(ResultColumn.SnakeCase(choice.ToString())); break;
            default: throw new ArgumentException($"Column {Name} has an unsupported type.", nameof(row));
        }
    }

    private static ResultColumn<T> Make(PropertyInfo property)
    {
        Type type = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
        string sql = type switch
        {
            _ when type == typeof(string) || type.IsEnum => "varchar",
            _ when type == typeof(bool) => "boolean",
            _ when type == typeof(int) => "integer",
            _ when type == typeof(long) => "bigint",
            _ when type == typeof(double) => "double",
            _ when type == typeof(decimal) => "decimal(12,2)",
            _ when type == typeof(DateOnly) => "date",
            _ => throw new ArgumentException($"{typeof(T).Name}.{property.Name} has an unsupported type."),
        };
        ParameterExpression row = Expression.Parameter(typeof(T));
        var read = Expression.Lambda<Func<T, object?>>(
            Expression.Convert(Expression.Property(row, property), typeof(object)), row).Compile();
        return new ResultColumn<T>(ResultColumn.SnakeCase(property.Name), sql, read);
    }
}

/// <summary>How a property is named as a column.</summary>
internal static class ResultColumn
{
    /// <summary>A name in snake case: <c>ShareLower30</c> is <c>share_lower_30</c>.</summary>
    public static string SnakeCase(string name)
    {
        var text = new StringBuilder(name.Length + 8);
        for (int i = 0; i < name.Length; i++)
        {
            bool starts = char.IsUpper(name[i]) || (char.IsDigit(name[i]) && !char.IsDigit(name[Math.Max(i - 1, 0)]));
            if (i > 0 && starts)
            {
                text.Append('_');
            }

            text.Append(char.ToLowerInvariant(name[i]));
        }

        return text.ToString();
    }
}
