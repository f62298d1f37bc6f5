using System.Globalization;
using PartsSignal.Analysis.Prediction.Answers;
using PartsSignal.Pipeline.Learning;
using PartsSignal.Reports.Phone;

namespace PartsSignal.Pipeline.Serving;

/// <summary>Answers questions about calls from the newest run.</summary>
/// <param name="live">The newest run.</param>
/// <param name="clock">Says what day it is.</param>
/// <param name="whenOld">What the reader can do when the data ends long ago, a sentence.</param>
internal sealed class CallDesk(ReloadingShop live, TimeProvider clock, string whenOld)
{
    /// <summary>The page before anything is asked.</summary>
    public CallView Empty() => View(new CallQuestion(), null, []);

    /// <summary>The page with the answer, or with what is wrong about the question.</summary>
    public CallView Ask(string? model, string? complaint, string? type, string? age, string? code)
    {
        CallQuestion question = Question(model, complaint, type, age, code);
        string[] faults = [.. question.Faults(live.Now().Answers.ApplianceTypes).Select(f => f.Message)];
        return View(question, faults.Length > 0 ? null : Answer(question), faults);
    }

    /// <summary>The answer to a question without faults.</summary>
    public Answer Answer(CallQuestion question) => live.Now().Answers.Ask(question, Today);

    /// <summary>A question as typed; what is blank is not told.</summary>
    public static CallQuestion Question(string? model, string? complaint, string? type, string? age, string? code) => new()
    {
        Model = Given(model),
        Complaint = Given(complaint),
        ApplianceType = Given(type),
        Age = Given(age) is not { } text ? null
            : double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double years) ? years : double.NaN,
        Code = Given(code),
    };

    private DateOnly Today => DateOnly.FromDateTime(clock.GetLocalNow().DateTime);

    private CallView View(CallQuestion asked, Answer? answer, IReadOnlyList<string> faults)
    {
        ServedShop shop = live.Now();
        return new CallView(shop.Answers.Settings.Shop, shop.DataUpTo, new AskedQuestion(asked.Model ?? "", asked.Complaint ?? "", asked.ApplianceType ?? "", asked.Age), answer)
        {
            Faults = faults,
            OwnTypes = shop.Answers.ApplianceTypes,
            Old = OldData.Sentence(shop.DataUpTo, Today, whenOld),
        };
    }

    private static string? Given(string? text) => string.IsNullOrWhiteSpace(text) ? null : text;
}
