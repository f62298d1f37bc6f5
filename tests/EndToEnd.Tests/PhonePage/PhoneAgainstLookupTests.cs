using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.Answers;
using PartsSignal.Analysis.Prediction.Contest;
using PartsSignal.Analysis.Prediction.LogOdds;
using PartsSignal.Analysis.Prediction.ModelFiles;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Commands;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Learning;
using PartsSignal.Pipeline.Publishing;
using PartsSignal.Pipeline.Reporting;
using PartsSignal.Pipeline.Words;
using PartsSignal.Reports.Phone;

namespace PartsSignal.EndToEnd.Tests.PhonePage;

/// <summary>The phone page of a shop that was really run, asked the same questions as <c>lookup</c>.</summary>
[Collection(RunSmallShopFixture.Collection)]
public sealed class PhoneAgainstLookupTests(RunSmallShopFixture shop, BrowserHost browser) : IClassFixture<BrowserHost>
{
    private const int Questions = 500;

    [BrowserFact]
    public async Task Answer_FiveHundredQuestions_EqualsLookups()
    {
        var output = new OutputFolder(shop.Out);
        ShopSettings settings = ShopFile.Load(shop.Input);
        LookupFacts facts = LookupStore.Read(output, shop.Input);
        using var database = Database.Open(new DatabaseOptions { Threads = 1 });
        CurrentStore.Attach(database, output.Store);
        ShippedModel model = Additive(ModelStore.Read(output), database);
        LookupData data = PhonePageMaker.Create(database, model, settings, shop.Input, new DateOnly(2026, 10, 31));
        Assert.NotNull(data.Weights);
        var today = new DateOnly(2026, 10, 31);
        var random = new Random(5);
        var reader = new CallReader(facts, ShopComplaints.Table(shop.Input, facts), () => SerialCodes.None, (_, _, _) => null);
        int sameOrder = 0;
        await using OpenedPage page = await browser.OpenTextAsync(LookupPage.Render(data), 390);
        for (int i = 0; i < Questions; i++)
        {
            CallQuestion question = ShopQuestions.Question(random, data.Models, data.Kinds);
            Call call = reader.Read(question, today) with { Earlier = ShopQuestions.Earlier(random, model) };
            string about = $"question {i}: {call}";
            string asked = PhoneQuestion.Of(call);
            Assert.Equal(call.ComplaintKind, await page.Page.EvaluateAsync<string>(
                "q => window.lookupKind(q[0], q[1])", new[] { question.Complaint, call.ApplianceType == Call.Unknown ? "" : call.ApplianceType }));
            double[] shown = await page.Page.EvaluateAsync<double[]>("q => window.lookupOdds(JSON.parse(q))", asked);
            Answer answer = AnswerBuilder.Build(call, model, facts, new AnswerOptions());
            double[] odds = model.Odds(call);
            Assert.All(odds.Select((p, k) => Math.Abs(p - shown[k])), off => Assert.True(off < 0.005, about));
            Assert.All(answer.Needs, n => Assert.True(Math.Abs(n.Odds - shown[data.Needs.ToList().IndexOf(n.Need)]) < 0.005, about));
            string[] checks = await page.Page.EvaluateAsync<string[]>("q => window.lookupChecks(JSON.parse(q))", asked);
            sameOrder += checks.SequenceEqual(answer.Checks?.Steps.Select(s => s.Check.What) ?? []) ? 1 : 0;
        }

        // Rounded weights may swap two checks that are as good as each other.
        Assert.True(sameOrder >= 0.97 * Questions, $"{sameOrder} of {Questions} orders of checks are the same");
    }

    [Fact]
    public void Page_OfTheRun_IsSmallEnoughForAPhone() =>
        Assert.InRange(new FileInfo(new OutputFolder(shop.Out).LookupPage).Length, 50_000, 3_000_000);

    private static ShippedModel Additive(ShippedModel shipped, Database database) => shipped.Predictor is LogOddsModel
        ? shipped
        : shipped with { Contender = LogOddsContender.ContenderName, Predictor = new LogOddsContender().Train(TrainingTable.Read(database)) };
}
