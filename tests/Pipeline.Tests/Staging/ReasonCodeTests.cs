using System.Reflection;
using PartsSignal.Pipeline.Rejects;

namespace PartsSignal.Pipeline.Tests.Staging;

public sealed class ReasonCodeTests
{
    [Fact]
    public void Meanings_EveryCode_IsDocumentedOnce()
    {
        string[] codes = [.. typeof(ReasonCode).GetFields(BindingFlags.Public | BindingFlags.Static).Where(f => f.IsLiteral).Select(f => (string)f.GetRawConstantValue()!).Order(StringComparer.Ordinal)];
        Assert.Equal(codes, ReasonCode.Meanings.Select(m => m.Code).Order(StringComparer.Ordinal));
        Assert.All(codes, c => Assert.Contains(c, RejectsReadme.Text(), StringComparison.Ordinal));
    }
}
