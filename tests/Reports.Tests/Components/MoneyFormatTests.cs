using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Tests.Components;

public sealed class MoneyFormatTests
{
    [Theory]
    [InlineData("131.68", "EUR", "131.68\u00A0EUR")]
    [InlineData("38.5", "$", "$38.50")]
    [InlineData("0", "£", "£0.00")]
    [InlineData("999.99", "", "999.99")]
    [InlineData("1499.27", "EUR", "1,499\u00A0EUR")]
    [InlineData("1234567.89", "€", "€1,234,568")]
    [InlineData("-12.5", "$", "-$12.50")]
    [InlineData("-2000", "kr", "-2,000\u00A0kr")]
    public void Text_Amount_IsWrittenAsPeopleDo(string amount, string currency, string expected) =>
        Assert.Equal(expected, MoneyFormat.Text(decimal.Parse(amount, System.Globalization.CultureInfo.InvariantCulture), currency));
}
