using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Words;

public sealed class ComponentClassifierTests
{
    private static readonly WordSets Shipped = WordSets.Load(null);
    private static readonly ComponentClassifier English = Shipped.Components.For(["en"]);

    [Theory]
    [InlineData("Inlet valve", "inlet_valve")]
    [InlineData("VALVE, WATER INLET 2-WAY", "inlet_valve")]
    [InlineData("Pump assy drain 30 W", "drain_pump")]
    [InlineData("Defrost heater 200 W", "defrost_heater")]
    [InlineData("Drain pmup", "drain_pump")]
    [InlineData("Sticker sheet", null)]
    [InlineData("", null)]
    [InlineData("Wash pump w. heater housing", "circulation_pump")]
    [InlineData("Float w. microswitch", "float_switch")]
    [InlineData("Condenser fan motor", "condenser_fan")]
    [InlineData("Gasket, door", "door_seal")]
    [InlineData("Washer drain pump 40W", "drain_pump")]
    [InlineData("Motor 230 V left", "motor")]
    [InlineData("Motor [phone]", "motor")]
    [InlineData("MTR, EVAP FAN", "evaporator_fan")]
    [InlineData("CTRL BD", "control_board")]
    [InlineData("T-STAT", "thermostat")]
    [InlineData("VLV, WTR INLET", "inlet_valve")]
    [InlineData("ICE MKR ASSY", "ice_maker")]
    [InlineData("[...] inlet valve [number]", "inlet_valve")]
    public void Component_Description_OfItsLongestPhrase(string description, string? component) => Assert.Equal(component, English.Component(description));

    [Theory]
    [InlineData("Drain motor")]
    [InlineData("motor, drain")]
    [InlineData("Dispenser motor")]
    [InlineData("auger motor")]
    [InlineData("Door lock spring")]
    [InlineData("Pump cover")]
    public void Component_WordThatSaysItIsSomethingElse_None(string description) => Assert.Null(English.Component(description));

    [Theory]
    [InlineData("Drain pump filter", "filter")]
    [InlineData("Door seal clamp", "clamp_set")]
    [InlineData("Timer knob", "knob")]
    [InlineData("Oven door lamp", "lamp")]
    public void Component_AccessoryOfSomething_TheAccessory(string description, string component) => Assert.Equal(component, English.Component(description));

    [Theory]
    [InlineData("de", "Laugenpumpe 30 W", "drain_pump")]
    [InlineData("de", "Tuerschloss", "door_lock")]
    [InlineData("fr", "pompe de vidange", "drain_pump")]
    [InlineData("fr", "Résistance", "heater")]
    [InlineData("es", "bomba de desagüe", "drain_pump")]
    [InlineData("nl", "koolborstels set", "motor_brushes")]
    [InlineData("it", "pompa di scarico", "drain_pump")]
    [InlineData("fr", "Moteur vent. évap.", "evaporator_fan")]
    [InlineData("es", "RESIST. HORNO", "bake_element")]
    [InlineData("it", "VENTOLA NO FROST", "evaporator_fan")]
    [InlineData("de", "Laugenp.", "drain_pump")]
    [InlineData("pl", "grzałka", "heater")]
    [InlineData("pl", "pompa odpływowa", "drain_pump")]
    public void Component_LanguageOfTheFile_ItsWords(string language, string description, string component) =>
        Assert.Equal(component, Shipped.Components.For([language]).Component(description));

    [Theory]
    [InlineData("auger motor", "motor")]
    [InlineData("drain motor", null)]
    public void LikelyComponent_WordNoTableKnows_StandsBeside(string description, string? component) => Assert.Equal(component, English.LikelyComponent(description));

    [Theory]
    [InlineData("Drain motor 30W", "drain_motor", false)]
    [InlineData("Motor, drain", "drain_motor", false)]
    [InlineData("Drain motor with clamp", "drain_motor", false)]
    [InlineData("Hose clamps 20 mm", "hose_clamps", true)]
    [InlineData("Screw set", "screw", true)]
    [InlineData("(45)", null, false)]
    [InlineData("...", null, false)]
    [InlineData("replaced the old thing that rattled behind there", null, false)]
    public void Name_Description_ItsTellingWords(string description, string? name, bool accessory)
    {
        var part = PartPhrase.Parse(description);
        Assert.Equal((name, accessory), (part.Name, part.IsAccessory));
    }

    [Theory]
    [InlineData("Washing machine", "washer")]
    [InlineData("fridge/freezer", "refrigerator")]
    [InlineData("Microwave oven", "microwave")]
    [InlineData("Laptop", null)]
    [InlineData("Built-in oven 60 cm", "range")]
    [InlineData("Gas range", "range")]
    [InlineData("Dishwahser", "dishwasher")]
    [InlineData("Einbaubackofen", "range")]
    [InlineData("Kühl-Gefrierkombination", "refrigerator")]
    [InlineData("lave-linge", "washer")]
    [InlineData("Lodówka", "refrigerator")]
    [InlineData("Hair dryer", null)]
    [InlineData("Haartrockner", null)]
    [InlineData("Hand dryer", null)]
    [InlineData("Wine cooler", null)]
    [InlineData("Coffee machine", null)]
    [InlineData("Pressure washer", null)]
    public void Appliances_Word_OurType(string word, string? type) => Assert.Equal(type, Shipped.Appliances.Find(word));

    [Theory]
    [InlineData("Hair dryer", "hair_dryer")]
    [InlineData("Aircon / Dehumidifier", "aircon_dehumidifier")]
    [InlineData("12", null)]
    [InlineData("one of the things that my neighbor brought", null)]
    public void OwnName_TypeNoTableKnows_ItsWords(string cell, string? name) => Assert.Equal(name, ApplianceNames.OwnName(cell));

    [Theory]
    [InlineData("the dryer is very noisy", "dryer")]
    [InlineData("Dishwasher leaking at the front", "dishwasher")]
    [InlineData("my hair dryer smells", null)]
    [InlineData("out of range", null)]
    [InlineData("washer and dryer both dead", null)]
    public void Named_Complaint_TheOnlyTypeItNames(string text, string? type) => Assert.Equal(type, Shipped.Appliances.For(["en"]).Named(text));

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
