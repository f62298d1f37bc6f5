using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Words;

/// <summary>Lines that charge for work, travel or a fee.</summary>
public sealed class ChargeWordsTests
{
    [Theory]
    [InlineData("State tax")]
    [InlineData("COUPON WEB10")]
    [InlineData("Service call")]
    [InlineData("TRIP CHARGE zone 2")]
    [InlineData("Labor")]
    [InlineData("TRIP CHG")]
    [InlineData("LBR")]
    [InlineData("Svc call, Saturday")]
    [InlineData("LABOR FLAT RATE")]
    [InlineData("Arbeitszeit K\u00e4ltetechniker")]
    [InlineData("M\u00e3o de obra")]
    [InlineData("Labour 1.5 h, replace drain pump")]
    [InlineData("Drain pump labor")]
    [InlineData("Diagnostic fee")]
    [InlineData("Diagnosis")]
    [InlineData("Shipping & handling")]
    [InlineData("Installation dishwasher")]
    [InlineData("After hours service call")]
    [InlineData("Repair work, second hour")]
    [InlineData("Anfahrtspauschale")]
    [InlineData("Arbeitszeit 45 min")]
    [InlineData("An- und Abfahrt")]
    [InlineData("Main d'\u0153uvre")]
    [InlineData("D\u00e9placement zone 3")]
    [InlineData("Mano de obra")]
    [InlineData("Gastos de desplazamiento")]
    [InlineData("Voorrijkosten")]
    [InlineData("Arbeidsloon monteur")]
    [InlineData("Diritto di chiamata")]
    [InlineData("Manodopera")]
    [InlineData("Robocizna")]
    [InlineData("Dojazd do klienta")]
    public void IsCharge_WorkTravelAndFees_Yes(string text) => Assert.True(ChargeWords.IsCharge(text));

    [Theory]
    [InlineData("Drain pump")]
    [InlineData("Service valve")]
    [InlineData("Service kit")]
    [InlineData("Shipping bolts")]
    [InlineData("Trip switch")]
    [InlineData("Drain pump + labor")]
    [InlineData("Drain pump and labor")]
    [InlineData("Drain pump incl. labor")]
    [InlineData("Charging valve")]
    [InlineData("Delivery hose")]
    [InlineData("Call button")]
    [InlineData("Transportsicherung")]
    [InlineData("Motor und Arbeitszeit")]
    [InlineData("Carte de commande")]
    [InlineData("Set")]
    [InlineData("Machine")]
    [InlineData("12345")]
    [InlineData("")]
    public void IsCharge_Parts_No(string text) => Assert.False(ChargeWords.IsCharge(text));

    [Fact]
    public void IsCharge_EveryWordOfTheTableOfComponents_No()
    {
        string[] phrases = [.. WordTable.Read(WordTable.ReadDefault("components.csv"), null, "component", "").Select(r => string.Join(' ', r.Stems))];
        Assert.True(phrases.Length > 1000);
        Assert.DoesNotContain(phrases, ChargeWords.IsCharge);
    }
}
