using System.Globalization;
using System.IO.Compression;
using Microsoft.ML;
using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.Contest;
using PartsSignal.Analysis.Prediction.LogOdds;
using PartsSignal.Analysis.Prediction.ModelFiles;
using PartsSignal.Analysis.Prediction.OddsPipeline;
using PartsSignal.Analysis.Vocabulary;

namespace PartsSignal.Analysis.Tests.Prediction.OddsPipeline;

public sealed class PartOddsPipelineTests
{
    private static readonly ClosedCall[] Calls = [.. new TestShop(9).Jobs(600, new DateOnly(2022, 1, 1)).Select(j => j.Call)];

    private static readonly Dictionary<string, ShippedModel> Trained = new(StringComparer.Ordinal);

    [Theory]
    [InlineData("complaint_only")]
    [InlineData("back_off")]
    [InlineData("log_odds")]
    [InlineData("stack")]
    public void Load_WhatWasSaved_GivesTheOddsOfTheFastReader(string name)
    {
        ShippedModel model = Model(name);
        (Call Call, DateOnly Day)[] asked = [.. Asked()];
        IDataView odds = Answers(Save(model), asked.Select(a => CallInput.From(a.Call, a.Day)));
        Assert.Equal(model.Needs, PartOddsPipeline.Needs(odds));
        CallOdds[] rows = [.. new MLContext().Data.CreateEnumerable<CallOdds>(odds, reuseRowObject: false)];
        Assert.Equal(asked.Length, rows.Length);
        for (int i = 0; i < rows.Length; i++)
        {
            double[] expected = model.Odds(asked[i].Call.On(asked[i].Day));
            Assert.All(expected.Zip(rows[i].Score), p => Assert.Equal(p.First, p.Second, 1e-7));
            Assert.Equal(model.Needs[Array.IndexOf(expected, expected.Max())], rows[i].PredictedNeed);
        }
    }

    [Fact]
    public void Save_TwiceAndInAnotherCulture_GivesTheSameBytes()
    {
        ShippedModel model = Model("log_odds");
        byte[] first = Save(model);
        CultureInfo before = CultureInfo.CurrentCulture;
        var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        (comma.NumberFormat.NumberDecimalSeparator, comma.NumberFormat.NegativeSign) = (",", "~");
        CultureInfo.CurrentCulture = comma;
        try
        {
            Assert.Equal(first, Save(model));
            Assert.Equal(Scores(first), Scores(Save(model)));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        using var zip = new ZipArchive(new MemoryStream(first));
        Assert.All(zip.Entries, e => Assert.Equal(1980, e.LastWriteTime.Year));
    }

    [Fact]
    public void Transform_ColumnsOfTheCaller_AreKeptAndHelpersAreNot()
    {
        var context = new MLContext();
        ITransformer pipeline = PartOddsPipeline.Create(context, Model("log_odds"));
        IDataView calls = context.Data.LoadFromEnumerable([new LabeledRow { Need = "part_1" }]);
        Assert.Equal(
            calls.Schema.Select(c => c.Name).Concat(["PredictedNeed", "Score"]).Order(StringComparer.Ordinal),
            pipeline.Transform(calls).Schema.Select(c => c.Name).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Transform_RowWithNothingKnown_StillGivesOddsThatSumToOne()
    {
        CallOdds row = Assert.Single(Rows(Save(Model("log_odds")), [new CallInput { AgeYears = -3, EarlierVisits = "x 3 0:a:b 4:part_1", ComplaintKind = "other", ComplaintText = "¿?" }]));
        Assert.Equal(1, row.Score.Sum(), 1e-5);
        Assert.All(row.Score, s => Assert.InRange(s, 0, 1));
    }

    [Fact]
    public void Save_ModelWithoutNeeds_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Save(PartLearner.Learn([], new ContestOptions(), [new BackOffContender()]).Model));

    [Fact]
    public void Save_OneNeedOnly_AnswersIt() =>
        Assert.Equal([1f], Assert.Single(Rows(Save(Train("log_odds", [.. Calls.Select(c => c with { Need = "none" })])), [new CallInput()])).Score);

    [Fact]
    public void Evaluate_NeedTheModelNeverSaw_IsAMissAndNotLeftOut()
    {
        var context = new MLContext();
        ShippedModel model = Model("log_odds");
        IDataView calls = context.Data.LoadFromEnumerable([.. Calls.Take(9).Select(c => Labeled(c, c.Need)), Labeled(Calls[9], "never_seen"), Labeled(Calls[10], "")]);
        Scores scores = PartEvaluation.Evaluate(context, PartOddsPipeline.Create(context, model).Transform(calls));
        Scores expected = PartsSignal.Analysis.Prediction.Scores.From(Forecasting.Run(model, [.. Calls.Take(9), Calls[9] with { Need = "never_seen" }]));
        Assert.Equal(10, scores.Jobs);
        Assert.Equal(0.1, scores.NeverSeen!.Value, 9);
        Assert.Equal(expected.LogLoss!.Value, scores.LogLoss!.Value, 1e-6);
        Assert.Equal(expected.Top1, scores.Top1);
    }

    [Fact]
    public void Stem_TypedWordsWithSlips_AreReadAsTheWordListReadsThem()
    {
        string[] words = ["drain", "drum", "drums", "noise", "water", "waters", "does", "not", "door", "odor", "heat", "heats", "leaking"];
        var list = new WordList(words);
        SortedDictionary<string, string> stored = WordSlips.Stored(words);
        var random = new Random(3);
        foreach (string typed in Enumerable.Range(0, 3_000).Select(_ => Slip(Slip(words[random.Next(words.Length)], random), random)).Concat(words).Where(w => w.Length >= 3))
        {
            string[] found = [.. WordSlips.Asked(typed).Select(a => stored.GetValueOrDefault(a, ""))];
            Assert.Equal(WordSlips.Count(typed), found.Length);
            Assert.Equal(list.Meant(typed).SingleOrDefault(), WordSlips.Stem(typed, found));
        }
    }

    private static string Slip(string word, Random random)
    {
        int at = random.Next(word.Length);
        char letter = "adehinorstw"[random.Next(11)];
        return random.Next(5) switch
        {
            0 => word.Remove(at, 1) + (word.Length == 1 ? "a" : ""),
            1 => word.Insert(at, letter.ToString()),
            2 => word[..at] + letter + word[(at + 1)..],
            3 when at > 0 => word[..(at - 1)] + word[at] + word[at - 1] + word[(at + 1)..],
            _ => word,
        };
    }

    /// <summary>Calls of all kinds: as booked, untyped, misspelled, with history, of unknown models.</summary>
    private static IEnumerable<(Call Call, DateOnly Day)> Asked()
    {
        for (int i = 0; i < 120; i++)
        {
            Call call = Calls[i].Call;
            Call typed = (i % 6) switch
            {
                0 => call,
                1 => call with { ComplaintKind = Need.OtherComplaint, ComplaintText = call.ComplaintText!.Replace("leak", "laek").Replace("noise", "noize") + " xyz" },
                2 => new Call { ComplaintKind = call.ComplaintKind, ComplaintText = call.ComplaintText, ErrorCode = "E20", CustomerKind = "contract" },
                3 => new Call { ComplaintKind = Need.OtherComplaint, ComplaintText = "nose and laeking", Brand = "brand 2", AgeYears = 3 },
                4 => call with { ModelFamily = "F999", ModelNumber = "F999-1", AgeYears = null, AgeBasis = Call.Unknown, ApplianceType = i % 4 == 0 ? "oven" : call.ApplianceType },
                _ => call with { Earlier = [new EarlierVisit(12, Calls[i].Need, call.ComplaintKind), new EarlierVisit(400, null, "noise"), new EarlierVisit(700, "part_2", "leak")] },
            };
            yield return (typed, Calls[i].OpenedOn);
        }
    }

    // Trained once for all tests; they run one after the other.
    private static ShippedModel Model(string name) => Trained.TryGetValue(name, out ShippedModel? model) ? model : Trained[name] = Train(name);

    private static ShippedModel Train(string name, ClosedCall[]? jobs = null)
    {
        ClosedCall[] calls = jobs ?? [.. Calls.Select((c, i) => c with
        {
            Call = i % 5 == 0 ? c.Call with { Earlier = [new EarlierVisit(20 + i, Calls[(i + 1) % Calls.Length].Need, c.Call.ComplaintKind)] } : i % 7 == 0 ? c.Call with { ApplianceType = Call.Unknown, ModelFamily = null, ModelNumber = null } : c.Call,
        })];
        IContender contender = new IContender[] { new ComplaintOnlyContender(), new BackOffContender(), new LogOddsContender(), new StackedContender([new BackOffContender(), new LogOddsContender()], [0.2, 0.9]) }.Single(c => c.Name == name);
        return new ShippedModel
        {
            Contender = name,
            LearnedTo = new DateOnly(2022, 5, 1),
            Jobs = calls.Length,
            Predictor = contender.Train(calls),
            Types = TypeReader.Learn(calls),
            Counts = BackOffTrainer.Train(calls),
            Temperature = 1.05,
            Carry80 = CarryLimits.Fit([], 0.8),
            Carry95 = CarryLimits.Fit([], 0.95),
        };
    }

    private static byte[] Save(ShippedModel model)
    {
        using var stream = new MemoryStream();
        PartOddsPipeline.Save(stream, model);
        return stream.ToArray();
    }

    private static IDataView Answers(byte[] file, IEnumerable<CallInput> calls)
    {
        var context = new MLContext();
        context.ComponentCatalog.RegisterAssembly(typeof(PartOddsPipeline).Assembly);
        return context.Model.Load(new MemoryStream(file), out _).Transform(PartOddsPipeline.Calls(context, calls));
    }

    private static CallOdds[] Rows(byte[] file, IEnumerable<CallInput> calls) => [.. new MLContext().Data.CreateEnumerable<CallOdds>(Answers(file, calls), reuseRowObject: false)];

    private static float[][] Scores(byte[] file) => [.. Rows(file, Asked().Select(a => CallInput.From(a.Call, a.Day))).Select(r => r.Score)];

    private static LabeledRow Labeled(ClosedCall call, string need)
    {
        CallInput row = CallInput.From(call.Call, call.OpenedOn);
        return new LabeledRow
        {
            ApplianceType = row.ApplianceType,
            Brand = row.Brand,
            ModelNumber = row.ModelNumber,
            ModelFamily = row.ModelFamily,
            AgeYears = row.AgeYears,
            AgeBasis = row.AgeBasis,
            OpenedOn = row.OpenedOn,
            ComplaintText = row.ComplaintText,
            ComplaintKind = row.ComplaintKind,
            CustomerKind = row.CustomerKind,
            Need = need,
        };
    }

    private sealed class LabeledRow : CallInput
    {
        [Microsoft.ML.Data.ColumnName("need")]
        public string Need { get; set; } = "";
    }
}
