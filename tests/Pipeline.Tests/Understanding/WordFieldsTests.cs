using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Understanding;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Understanding;

/// <summary>Columns that are known by the words in their cells, found in a whole log.</summary>
public sealed class WordFieldsTests
{
    private static readonly string[] Complaints = ["does not drain", "leaks at the door", "no heat", "loud noise when spinning"];

    [Theory]
    [InlineData("Job Status", "Closed|Closed|Open|Cancelled", "Job Status")]
    [InlineData("Bearbeitungsstand", "Erledigt|Erledigt|Offen|Storniert", "Bearbeitungsstand")]
    [InlineData("XZ7", "zamknięte|zamknięte|otwarte|anulowane", "XZ7")]
    [InlineData("Payment status", "Closed|Open|Closed|Open", null)]
    [InlineData("Priority", "High|Low|Normal|Low", null)]
    public void Inspect_LogWithAStatusBesideItsOutcome_FindsIt(string header, string cells, string? expected) =>
        Assert.Equal(expected, Map(header, cells).Map.Columns.GetValueOrDefault("status")?[0]);

    [Theory]
    [InlineData("Art des Einsatzes", "Reparatur|Wartung|Reparatur|Installation", "Art des Einsatzes")]
    [InlineData("Type of visit", "Repair|Preventive maintenance|Repair|Inspection", "Type of visit")]
    [InlineData("Tipo", "Correctivo|Preventivo|Correctivo|Correctivo", "Tipo")]
    [InlineData("Customer type", "Maintenance|Repair|Maintenance|Repair", null)]
    [InlineData("Reason", "Leak|Noise|Heat|Smell", null)]
    public void Inspect_LogThatTellsWhatVisitsWereFor_FindsIt(string header, string cells, string? expected) =>
        Assert.Equal(expected, Map(header, cells).Map.Columns.GetValueOrDefault("visit_reason")?[0]);

    [Theory]
    [InlineData("fault_component", "Component at fault", "drain pump|inlet valve|door seal|drain pump", "Component at fault")]
    [InlineData("fault_component", "Defektes Bauteil", "Pumpe|Ventil|Dichtung|Pumpe", "Defektes Bauteil")]
    [InlineData("fault_component", "Composant en cause", "pompe|vanne|joint|pompe", "Composant en cause")]
    [InlineData("fault_component", "Failed component", "K-10332|K-10333|K-20331|K-10335", null)]
    [InlineData("fault_component", "Group", "drain pump|inlet valve|door seal|drain pump", null)]
    [InlineData("repair_notes", "Work done", "cleaned the filter and tested|replaced pump and ran a cycle|advised the customer|tightened the hose", "Work done")]
    [InlineData("repair_notes", "Lavori eseguiti", "pulito il filtro e provato|sostituita pompa|nessun guasto trovato|stretto il tubo", "Lavori eseguiti")]
    [InlineData("supplier", "Part supplier", "Brix|Halden|Brix|Orm", "Part supplier")]
    [InlineData("supplier", "Lieferant", "Brix|Halden|Brix|Orm", "Lieferant")]
    public void Inspect_HeaderThatNamesAFurtherField_FindsIt(string field, string header, string cells, string? expected)
    {
        SourceMap map = Map(header, cells).Map;
        Assert.Equal(expected, map.Columns.GetValueOrDefault(field)?[0]);
        Assert.Equal(["Complaint"], map.Columns["complaint"]);
    }

    [Fact]
    public void Inspect_StatusOfWhichHardlyAWordIsKnown_IsAsked()
    {
        (SourceMap map, IReadOnlyList<ReadingQuestion> questions) = Map("Job status", "Closed|Zorble|Quux|Fnord");
        Assert.False(map.Columns.ContainsKey("status"));
        ReadingQuestion asked = Assert.Single(questions, q => q.Field == "status");
        Assert.Equal(["Job status", "none"], asked.Choices.Select(c => c.Value));
        Assert.Equal("none", asked.Default);
    }

    [Fact]
    public void Inspect_AnsweredStatus_IsHeeded()
    {
        (SourceMap map, IReadOnlyList<ReadingQuestion> questions) = Map("Job status", "Closed|Zorble|Quux|Fnord", "jobs.csv/field/status", "Job status");
        Assert.Equal(["Job status"], map.Columns["status"]);
        Assert.DoesNotContain(questions, q => q.Field == "status");
    }

    private static (SourceMap Map, IReadOnlyList<ReadingQuestion> Questions) Map(string header, string cells, params string[] answer)
    {
        DirectoryInfo shop = Directory.CreateTempSubdirectory("partssignal-words-");
        string[] words = cells.Split('|');
        IEnumerable<string> rows = Enumerable.Range(0, 120).Select(i =>
            $"{1000 + i},{new DateOnly(2025, 1, 6).AddDays(i):yyyy-MM-dd},{new DateOnly(2025, 1, 7).AddDays(i + (i % 4)):yyyy-MM-dd},Washer,{Complaints[i % 4]},{(i % 3 == 0 ? "no fault found" : "part replaced")},{words[i % words.Length]},QX-{10500 + (i % 7)}");
        File.WriteAllLines(Path.Combine(shop.FullName, "jobs.csv"), [$"Job number,Date opened,Date closed,Appliance,Complaint,Outcome,{header},Part number", .. rows]);
        Dictionary<string, string> given = answer.Length == 0 ? [] : new() { [answer[0]] = answer[1] };
        ShopInspection seen = new Inspector(new ReadingLimits(), WordSets.Load(null), given).Inspect(ShopTables.In(shop.FullName, new ReadingLimits()), CancellationToken.None);
        shop.Delete(recursive: true);
        return (Assert.Single(seen.Tables).Map!, seen.Questions);
    }
}
