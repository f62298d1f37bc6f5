using PartsSignal.Pipeline.Cleaning;

namespace PartsSignal.Pipeline.Tests.Cleaning;

public sealed class NumberBesideNameTextTests
{
    [Theory]
    [InlineData("DP-118 (drain pump)", "DP-118", "drain pump")]
    [InlineData("drain pump DP-118", "DP-118", "drain pump")]
    [InlineData("drain pump (DP-118)", "DP-118", "drain pump")]
    [InlineData("WV-2207 (inlet valve, double)", "WV-2207", "inlet valve, double")]
    [InlineData("drum roller (ea) RLR-2", "RLR-2", "drum roller (ea)")]
    [InlineData("QC4100 Machine à glace", "QC4100", "Machine à glace")]
    [InlineData("31-2539 JGO ESCOBILLAS", "31-2539", "JGO ESCOBILLAS")]
    [InlineData("40118 Trommelrolle", "40118", "Trommelrolle")]
    [InlineData("Heater 6 kW (HK-4410)", "HK-4410", "Heater 6 kW")]
    [InlineData("Thermostat 360° (71052)", "71052", "Thermostat 360°")]
    [InlineData("dbl WV-2207", "WV-2207", null)]
    public void TryRead_NumberAndName_GivesBoth(string cell, string number, string? name) =>
        Assert.Equal((true, number, name), (NumberBesideNameText.TryRead(cell, out string n, out string? w), n, w));

    [Theory]
    [InlineData(null)]
    [InlineData("DP-118")]
    [InlineData("drain pump")]
    [InlineData("heater 2000W")]
    [InlineData("fan motor 12V")]
    [InlineData("2000W heater")]
    [InlineData("2024 drain pump")]
    [InlineData("AB12 77 B")]
    [InlineData("AB-120 LH")]
    [InlineData("belt 1195 J5")]
    [InlineData("heater (2000W)")]
    [InlineData("AB 12 34 (56789)")]
    public void TryRead_AnythingElse_GivesNeither(string? cell) => Assert.False(NumberBesideNameText.TryRead(cell, out _, out _));

    [Theory]
    [InlineData("DP-118 (drain pump), WV-2207 (inlet valve, double)", "DP-118 (drain pump)", "WV-2207 (inlet valve, double)")]
    [InlineData("DP-118 (drain pump; 7731", "DP-118 (drain pump", "7731")]
    public void Read_ListWithBrackets_ACommaInsideJoins(string cell, params string[] parts) =>
        Assert.Equal(parts, PartsListText.Read(cell).Select(p => p.Part));

    [Theory]
    [InlineData("  /  /    ", true)]
    [InlineData("__.__.____", true)]
    [InlineData("--/--/--", true)]
    [InlineData("1/2", false)]
    [InlineData("./a", false)]
    public void EmptyMark_FormOfADate_IsEmpty(string cell, bool empty) => Assert.Equal(empty, EmptyMark.Is(cell));
}
