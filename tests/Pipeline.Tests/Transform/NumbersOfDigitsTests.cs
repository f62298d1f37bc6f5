namespace PartsSignal.Pipeline.Tests.Transform;

/// <summary>Part numbers that look like phone numbers are kept where a whole column has that form, also in lists and beside names.</summary>
public sealed class NumbersOfDigitsTests
{
    private static readonly string[] Numbers = ["756.6348", "961.8465", "661.1113", "198.4660"];

    [Theory]
    [InlineData("parts_list", "{0}; 182.8617")]
    [InlineData("part", "{0} - Drum roller")]
    [InlineData("part", "{0}")]
    public async Task Load_ColumnOfSuchNumbers_KeepsThem(string field, string form)
    {
        using var shop = new SmallShop();
        IEnumerable<string> rows = Enumerable.Range(1, 200).Select(i => $"{i},{new DateOnly(2026, 1, 1).AddDays(i):yyyy-MM-dd},Customer {i},{string.Format(System.Globalization.CultureInfo.InvariantCulture, form, Numbers[i % 4])}");
        shop.Write("jobs.csv", "Job,Opened,Name,Parts\n" + string.Join('\n', rows) + '\n').Write("shop.json", $$"""
            { "sources": [ { "files": "jobs.csv", "kind": "jobs", "dateOrder": "ymd", "columns": { "job_id": "Job", "opened_on": "Opened", "customer_name": "Name", "{{field}}": "Parts" } } ] }
            """);
        await shop.Load();
        Assert.Equal(Numbers.Order(StringComparer.Ordinal), shop.Rows("from job_parts select distinct part_raw where part_raw <> '182.8617' order by 1"));
        Assert.Equal(["0"], shop.Rows("from job_parts select count(*) where part_raw is null"));
    }
}
