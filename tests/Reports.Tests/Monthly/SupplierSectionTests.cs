using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Monthly;

namespace PartsSignal.Reports.Tests.Monthly;

public sealed class SupplierSectionTests
{
    private const string Quality = """
        supplier_quality as
        select supplier, component, followed, failed, failed / followed as failed_share, 0.01::double as failed_lower, 0.2::double as failed_upper, missing,
            2 as others_failed, others as others_followed, out as stands_out, null::double as return_share, null::double as return_lower, null::double as return_upper, 'too few pieces' as return_missing, 0 as pieces
        from (values
            ('Hallam Spares', 'inlet_valve', 140, 4, null::varchar, 0, false), ('Norrad Supply', 'drain_pump', 180, 22, null, 100, true),
            ('unknown', 'drain_pump', 50, 2, null, 100, false), ('Norrad Supply', 'igniter', 0, 0, 'too few', 0, false), ('Norrad Supply', null, 180, 22, null, 0, false)
        ) as t(supplier, component, followed, failed, missing, others, out)
        """;

    private const string LeadTimes = """
        lead_times as
        select 'all' as "grouping", 'Norrad Supply' as supplier, 100 as lines, 12 as waiting, 3.0::double as median_days, 2.0::double as median_lower, 4.0::double as median_upper, null::varchar as missing, 8.0::double as ninety_percent_days
        """;

    [Fact]
    public void Read_NoOrders_IsNullAndSaidSo()
    {
        using Database database = SectionCase.Session();
        Assert.Null(SupplierSection.Read(database));
        Assert.Contains("No parts orders are in the files", SectionCase.Text(SupplierSection.Build(null)), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_Quality_LeavesOutUnknownSuppliersAndPartsNobodyWatched()
    {
        using Database database = SectionCase.Session(Quality, LeadTimes);
        SupplierFacts facts = SupplierSection.Read(database)!;
        Assert.Equal(["Norrad Supply drain pump", "Hallam Spares inlet valve"], facts.Quality.Select(q => q.Name));
        Assert.Equal([(0.02, (long?)100), (null, 0)], facts.Quality.Select(q => (q.OthersShare, q.OthersFollowed)));
    }

    [Fact]
    public void Read_LeadTimesWithoutReturns_SayWhyThereIsNoShare()
    {
        using Database database = SectionCase.Session(Quality, LeadTimes);
        SupplierLeadTime lead = Assert.Single(SupplierSection.Read(database)!.LeadTimes);
        Assert.Equal((88L, 12L, Estimate.From(3, 2, 4), Estimate.None("too few pieces")), (lead.Received, lead.Waiting, lead.MedianDays, lead.ReturnShare));
    }

    [Fact]
    public void Build_SupplierThatStandsOut_IsNamed()
    {
        using Database database = SectionCase.Session(Quality, LeadTimes);
        string text = SectionCase.Text(SupplierSection.Build(SupplierSection.Read(database)));
        Assert.Contains("Fails early more often than the same part from elsewhere: Norrad Supply drain pump.", text, StringComparison.Ordinal);
        Assert.Contains("320 parts whose supplier is known, watched for 90 days", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Build_NoPartTraced_KeepsTheLeadTimes()
    {
        string text = SectionCase.Text(SupplierSection.Build(new SupplierFacts([], [new("Norrad Supply", 88, 12, Estimate.None("too few order lines"), null, Estimate.None("too few pieces"))], 90)));
        Assert.Contains("no fitted part can be traced to the order it came from", text, StringComparison.Ordinal);
        Assert.Contains("Norrad Supply 88 12 – – – too few pieces", text, StringComparison.Ordinal);
    }
}
