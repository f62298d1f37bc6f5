using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Words;

public sealed class ComponentClassifierTests
{
    private static readonly WordSets Shipped = WordSets.Load(null);

    [Theory]
    [InlineData("Inlet valve", "inlet_valve")]
    [InlineData("VALVE, WATER INLET 2-WAY", "inlet_valve")]
    [InlineData("Pump assy drain 30 W", "drain_pump")]
    [InlineData("Defrost heater 200 W", "defrost_heater")]
    [InlineData("Drain pmup", "drain_pump")]
    [InlineData("Sticker sheet", null)]
    [InlineData("", null)]
    public void Component_Description_OfItsLongestPhrase(string description, string? component) => Assert.Equal(component, Shipped.Components.Component(description));

    [Theory]
    [InlineData("Washing machine", "washer")]
    [InlineData("fridge/freezer", "refrigerator")]
    [InlineData("Microwave oven", "microwave")]
    [InlineData("Laptop", null)]
    public void Appliances_Word_OurType(string word, string? type) => Assert.Equal(type, Shipped.Appliances.Find(word));

    [Theory]
    [InlineData("done - part", "fixed_with_part")]
    [InlineData("done - no part", "fixed_without_part")]
    [InlineData("BER", "not_worth_repairing")]
    [InlineData("NFF", "no_fault_found")]
    [InlineData("part on order", "part_ordered")]
    [InlineData("cust refused quote", "declined")]
    [InlineData("Fixed", "fixed")]
    [InlineData("not fixed", "unknown")]
    [InlineData("zzz", null)]
    public void Outcomes_Word_OurOutcome(string word, string? outcome) => Assert.Equal(outcome, Shipped.Outcomes.Find(word));
}
