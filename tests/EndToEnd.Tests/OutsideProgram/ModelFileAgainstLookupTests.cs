using System.Globalization;
using Microsoft.ML;
using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.Answers;
using PartsSignal.Analysis.Prediction.ModelFiles;
using PartsSignal.Analysis.Prediction.OddsPipeline;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Learning;
using PartsSignal.Pipeline.Publishing;
using PartsSignal.Pipeline.Reporting;
using PartsSignal.Pipeline.Words;
using PartsSignal.Reports.Phone;

namespace PartsSignal.EndToEnd.Tests.OutsideProgram;

/// <summary>The model file that a run leaves for other programs, asked the same questions as <c>lookup</c>.</summary>
[Collection(RunSmallShopFixture.Collection)]
public sealed class ModelFileAgainstLookupTests(RunSmallShopFixture shop)
{
    private const int Questions = 500;
    private static readonly DateOnly Today = new(2026, 10, 31);

    // The table of calls is read from text, as another program would read it.
    private const string Program = """
        using System.Globalization;
        using Microsoft.ML;
        using Microsoft.ML.Data;
        using PartsSignal.Analysis.Prediction.OddsPipeline;

        var context = new MLContext();
        context.ComponentCatalog.RegisterAssembly(typeof(PartOddsPipeline).Assembly);
        ITransformer model = context.Model.Load(args[0], out DataViewSchema columns);
        string[] header = File.ReadLines(args[1]).First().Split('\t');
        TextLoader loader = context.Data.CreateTextLoader(new TextLoader.Options
        {
            HasHeader = true,
            MissingRealsAsNaNs = true,
            Separators = ['\t'],
            Columns = [.. header.Select((name, i) => new TextLoader.Column(name, name == "age_years" ? DataKind.Double : name == "opened_on" ? DataKind.DateTime : DataKind.String, i))],
        });
        IDataView odds = model.Transform(loader.Load(args[1]));
        VBuffer<ReadOnlyMemory<char>> slots = default;
        odds.Schema["Score"].GetSlotNames(ref slots);
        Console.WriteLine(string.Join(' ', slots.DenseValues()));
        foreach (CallOdds call in context.Data.CreateEnumerable<CallOdds>(odds, reuseRowObject: false))
        {
            Console.WriteLine(call.PredictedNeed + " " + string.Join(' ', call.Score.Select(s => s.ToString("R", CultureInfo.InvariantCulture))));
        }
        """;

    [Fact]
    public void Load_FiveHundredQuestions_GivesTheOddsOfLookup()
    {
        (ShippedModel model, LookupFacts facts, Call[] calls) = Asked();
        var context = new MLContext();
        IDataView odds = PartOddsPipeline.Load(context, ModelStore.PipelineOf(new OutputFolder(shop.Out))).Transform(PartOddsPipeline.Calls(context, calls.Select(c => CallInput.From(c, Today))));
        List<string> needs = [.. PartOddsPipeline.Needs(odds)];
        Assert.Equal(model.Needs, needs);
        CallOdds[] answers = [.. context.Data.CreateEnumerable<CallOdds>(odds, reuseRowObject: false)];
        Assert.Equal(Questions, answers.Length);
        for (int i = 0; i < Questions; i++)
        {
            Assert.All(model.Odds(calls[i]).Zip(answers[i].Score), p => Assert.Equal(p.First, p.Second, 1e-6));
            Assert.All(AnswerBuilder.Build(calls[i], model, facts, new AnswerOptions()).Needs, n => Assert.Equal(n.Odds, answers[i].Score[needs.IndexOf(n.Need)], 1e-6));
        }
    }

    [SlowFact]
    public async Task Load_FromAProjectOutsideTheSolution_GivesTheOddsOfLookup()
    {
        (ShippedModel model, _, Call[] calls) = Asked();
        using OutsideProject project = await OutsideProject.BuildAsync(Program);
        string table = project.Sub("calls.tsv");
        await File.WriteAllLinesAsync(table, [Header, .. calls.Select(c => Line(CallInput.From(c, Today)))]);
        string[] printed = (await project.RunAsync(ModelStore.PipelineOf(new OutputFolder(shop.Out)), table)).TrimEnd('\n').Split('\n');
        Assert.Equal(string.Join(' ', model.Needs), printed[0]);
        Assert.Equal(Questions + 1, printed.Length);
        for (int i = 0; i < Questions; i++)
        {
            string[] cells = printed[i + 1].Split(' ');
            double[] expected = model.Odds(calls[i]);
            Assert.Equal(model.Needs[Array.IndexOf(expected, expected.Max())], cells[0]);
            Assert.All(expected.Zip(cells[1..]), p => Assert.Equal(p.First, double.Parse(p.Second, CultureInfo.InvariantCulture), 1e-6));
        }
    }

    private const string Header = "appliance_type\tbrand\tmodel_number\tmodel_family\tage_years\tage_basis\topened_on\tcomplaint_text\tcomplaint_kind\terror_code\tcustomer_kind\tearlier_visits";

    private static string Line(CallInput c) => string.Join('\t',
        c.ApplianceType, c.Brand, c.ModelNumber, c.ModelFamily, double.IsNaN(c.AgeYears) ? "" : c.AgeYears.ToString("R", CultureInfo.InvariantCulture), c.AgeBasis,
        c.OpenedOn.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), c.ComplaintText, c.ComplaintKind, c.ErrorCode, c.CustomerKind, c.EarlierVisits);

    private (ShippedModel Model, LookupFacts Facts, Call[] Calls) Asked()
    {
        var output = new OutputFolder(shop.Out);
        LookupFacts facts = LookupStore.Read(output, shop.Input);
        ShippedModel model = ModelStore.Read(output);
        using var database = Database.Open(new DatabaseOptions { Threads = 1 });
        CurrentStore.Attach(database, output.Store);
        LookupModel[] models = [.. database.Read<ModelRow>("queries/report/models.sql").Select(m => new LookupModel(m.ModelNumber, m.ModelFamily, m.ApplianceType, m.Brand))];
        IReadOnlyList<LookupKind> kinds = PhoneWords.Kinds(ShopComplaints.Rules(shop.Input, facts));
        var reader = new CallReader(facts, ShopComplaints.Table(shop.Input, facts), () => SerialCodes.None, (_, _, _) => null);
        var random = new Random(7);
        return (model, facts, [.. Enumerable.Range(0, Questions).Select(_ => reader.Read(ShopQuestions.Question(random, models, kinds), Today) with { Earlier = ShopQuestions.Earlier(random, model) })]);
    }

    private sealed record ModelRow(string ModelNumber, string ModelFamily, string? ApplianceType, string? Brand);
}
