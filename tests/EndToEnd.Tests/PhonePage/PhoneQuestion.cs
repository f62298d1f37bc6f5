using System.Globalization;
using System.Text.Json;
using PartsSignal.Analysis.Prediction;

namespace PartsSignal.EndToEnd.Tests.PhonePage;

/// <summary>A call as the page's own script takes it.</summary>
internal static class PhoneQuestion
{
    public static string Of(Call call) => JsonSerializer.Serialize(new
    {
        type = call.ApplianceType,
        brand = call.Brand,
        family = call.ModelFamily,
        model = call.ModelNumber,
        kind = call.ComplaintKind,
        text = call.ComplaintText ?? "",
        code = call.ErrorCode,
        customer = call.CustomerKind,
        age = call.AgeYears,
        made = call.MadeOn?.ToString("yyyy-MM", CultureInfo.InvariantCulture),
        month = call.Month,
        earlier = call.Earlier.Select(v => new { daysAgo = v.DaysAgo, need = v.Need, kind = v.ComplaintKind }),
    });
}
