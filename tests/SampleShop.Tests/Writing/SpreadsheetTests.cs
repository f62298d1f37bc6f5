using PartsSignal.SampleShop.Writing;

namespace PartsSignal.SampleShop.Tests.Writing;

public sealed class SpreadsheetTests
{
    [Theory]
    [InlineData("1E10", "1.00E+10")]
    [InlineData("3E05", "3.00E+05")]
    [InlineData("MAR-01", "01-Mar")]
    [InlineData("0077313", "77313")]
    [InlineData("40-1187", "40-1187")]
    [InlineData("EM4410B", "EM4410B")]
    public void Show_PartNumber_AsASpreadsheetShowsIt(string number, string shown) =>
        Assert.Equal(shown, Spreadsheet.Show(number));
}
