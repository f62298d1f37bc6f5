using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.Tests.Prediction.Answers;

public sealed class FamilyPartsTests
{
    [Theory]
    [InlineData("41.00", "39.00", "20.00", "41.00")] // the list price of the current number
    [InlineData(null, "39.00", "20.00", "39.00")] // else what was last paid
    [InlineData(null, null, "20.00", "20.00")] // else the price of the old number
    [InlineData(null, null, null, null)]
    public void Price_OfASupersededNumber_IsTheCurrentOnesElseTheLastPaid(string? listed, string? paid, string? old, string? price)
    {
        using var database = Database.Open(new DatabaseOptions { Threads = 1 });
        foreach (string table in (string[])["fitments", "parts", "part_orders"])
        {
            StoreTables.CreateEmpty(database, table);
        }

        database.Execute($"""
            insert into fitments values ('F1', 'P-NEW', 'inlet_valve', 'seen', 3, 1, null);
            insert into parts by name
                select n as part_number, 'P-NEW' as current_number, 'inlet_valve' as component, price::decimal(12, 2) as price, 1.0 as space_units, true as available, '' as source_file, 1 as source_line
                from (values ('P-NEW', {Text(listed)}), ('P-OLD', {Text(old)})) as t(n, price);
            update fitments set part_number = 'P-OLD';
            insert into part_orders by name
                select 'O' || day as order_id, 1 as line, 'S' as supplier, ('2024-01-0' || day)::date as ordered_on, 'P-NEW' as part_number, 'exact' as part_basis, 1 as quantity,
                    cost::decimal(12, 2) as unit_cost, 0 as returned_quantity, '' as source_file, 1 as source_line
                from (values (1, '55.00'), (2, {Text(paid)}), (3, null)) as t(day, cost)
                where {Text(paid)} is not null;
            """);
        Assert.Equal(price, Assert.Single(database.Read<Priced>("queries/prediction/family_parts.sql")).Price?.ToString(System.Globalization.CultureInfo.InvariantCulture));
    }

    private static string Text(string? value) => value is null ? "null" : $"'{value}'";

    private sealed record Priced(string PartNumber, decimal? Price);
}
