using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Tests.Reading;

public sealed class HeaderFinderTests
{
    [Theory]
    [InlineData("Job,Opened,Complaint|1,2026-08-03,no heat", 0)]
    [InlineData("Hollander|Job,Opened,Complaint|1,2026-08-03,no heat|2,2026-08-04,leaks", 1)]
    [InlineData("12 number,13 date in,12 fault|1,2026-08-03,no heat|2,2026-08-04,leaks", 0)]
    [InlineData("Part,2024-01,2024-02,2024-03|AB-1,3,0,2|AB-2,1,4,0", 0)]
    [InlineData("Part,01/2024,02/2024,03/2024|AB-1,3,0,2|AB-2,1,4,0", 0)]
    [InlineData("12 Mill Lane,2024-01,7 Elm Road|14 Mill Lane,2024-02,9 Elm Road|15 Mill Lane,2024-03,9 Oak Road", -1)]
    [InlineData("AB-1,2024-01,2024-02,2024-02|AB-2,2024-02,2024-05,2024-06|AB-3,2024-02,2024-05,2024-07", -1)]
    [InlineData("1,2026-08-03,no heat|2,2026-08-04,leaks", -1)]
    public void Find_FirstRows_HeaderOrNone(string rows, int at) =>
        Assert.Equal(at, HeaderFinder.Find([.. rows.Split('|').Select(r => new SampleRow(1, r.Split(','), [], false))], []));

    [Fact]
    public void Find_SheetWithNotesBesideTheLastHeading_HeaderIsFound()
    {
        string[] rows = ["2024,,,,", "#,Called in,Says,Fixed,", .. Enumerable.Range(1, 9).Select(i => $"{500 + i},2024-03-0{i},no heat,2024-03-1{i % 10},call first")];
        Assert.Equal(1, HeaderFinder.Find([.. rows.Select((r, i) => new SampleRow(i + 1, r.Split(','), [], true))], []));
    }
}
