using PartsSignal.Analysis.CheckOrder;
using PartsSignal.Analysis.Prediction.Answers;
using PartsSignal.Pipeline.Learning;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Learning;

public sealed class CallReaderTests
{
    private static readonly CallReader Reader = new(
        new LookupFacts([], [], [], [], [], CheckTable.Empty, []), WordSets.Load(null).Complaints, () => SerialCodes.None, (_, _, _) => null);

    public static TheoryData<string> Kinds => [.. WordSets.ComplaintKinds(Path.GetTempPath())];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Read_NameOfAKnownKind_IsThatKindOnEveryAppliance(string kind)
    {
        Assert.All(CallQuestion.ApplianceTypes, type => Assert.Equal(kind, Read(kind, type)));
        Assert.Equal(kind, Read($" {kind} ", null));
    }

    [Theory]
    [InlineData("not lighting", "range", "no_ignition")]
    [InlineData("hangs after a while", "washer", "stops")]
    [InlineData("no_such_kind", "washer", "other")]
    public void Read_OtherWords_AreReadByTheTableOfWords(string typed, string type, string kind) => Assert.Equal(kind, Read(typed, type));

    [Theory]
    [InlineData("dishwasher leaks from the door", null, "dishwasher")]
    [InlineData("fridge not cold", null, "refrigerator")]
    [InlineData("dishwasher leaks", "washer", "washer")] // what is chosen comes first
    [InlineData("no_fill", null, "unknown")]
    public void Read_TypeNamedInTheComplaint_CountsWhereNoneIsChosen(string typed, string? chosen, string type)
    {
        var words = WordSets.Load(null);
        var reader = new CallReader(
            new LookupFacts([], [], [], [], [], CheckTable.Empty, []), words.Complaints, () => SerialCodes.None, (_, _, _) => null, words.Appliances);
        Assert.Equal(type, reader.Read(new CallQuestion { Complaint = typed, ApplianceType = chosen }, new DateOnly(2026, 8, 3)).ApplianceType);
    }

    private static string Read(string complaint, string? type) =>
        Reader.Read(new CallQuestion { Complaint = complaint, ApplianceType = type }, new DateOnly(2026, 8, 3)).ComplaintKind;
}
