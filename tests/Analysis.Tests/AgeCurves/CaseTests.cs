using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Tests.Fixtures;

namespace PartsSignal.Analysis.Tests.AgeCurves;

/// <summary>The one definition of a failure: a case, with the component of its last diagnosis.</summary>
public sealed class CaseTests
{
    private static readonly DateOnly Day = new(2022, 3, 1);

    [Fact]
    public void Cases_WrongDiagnosisThenTheRightOne_IsOneFailureOfTheRightComponent() => Assert.Equal(
        [("1", "control_board", "inlet_valve", 2)],
        Cases(Call("1", 0, "inlet_valve", "no_fill"), Call("2", 12, "control_board", "no_fill")));

    [Fact]
    public void Cases_SameComponentSoonAgain_IsOneFailureWhateverTheComplaint() => Assert.Equal(
        [("1", "drain_pump", "drain_pump", 2)], Cases(Call("1", 0, "drain_pump", "no_drain"), Call("2", 20, "drain_pump", "noise")));

    [Fact]
    public void Cases_AnotherComplaintAndComponent_AreTwo() => Assert.Equal(
        [("1", "drain_pump", "drain_pump", 1), ("2", "heater", "heater", 1)], Cases(Call("1", 0, "drain_pump", "no_drain"), Call("2", 20, "heater", "no_heat")));

    [Fact]
    public void Cases_SameComponentAfterTheWindow_AreTwo() =>
        Assert.Equal(2, Cases(Call("1", 0, "drain_pump", "no_drain"), Call("2", 40, "drain_pump", "no_drain")).Count);

    [Fact]
    public void Cases_CallbackThatFoundNothing_KeepsTheComponent() => Assert.Equal(
        [("1", "drain_pump", "drain_pump", 2)], Cases(Call("1", 0, "drain_pump", "no_drain"), Call("2", 12, "none", "no_drain") with { Outcome = "no_fault_found" }));

    [Fact]
    public void Cases_UnitsThatCannotBeTold_AreEachTheirOwn() =>
        Assert.Equal(2, Cases(Call("1", 0, "drain_pump", "no_drain") with { UnitId = null }, Call("2", 3, "drain_pump", "no_drain") with { UnitId = null }).Count);

    private static IReadOnlyList<(string, string, string, int)> Cases(params JobRow[] jobs)
    {
        using Database database = new SmallShop { Jobs = [.. jobs] }.Build([.. SqlModels.In("results/failures")], Day.AddDays(400));
        return database.Query("select job_id, component, first_component, calls from cases order by job_id", r => (r.GetString(0), r.GetString(1), r.GetString(2), r.GetInt32(3)));
    }

    private static JobRow Call(string job, int day, string component, string complaint) =>
        new(job, Day.AddDays(day)) { ClosedOn = Day.AddDays(day), UnitId = "u", MainComponent = component, ComplaintKind = complaint };
}
