using System.Text;
using PartsSignal.Analysis.CheckOrder;
using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.Answers;
using PartsSignal.Analysis.Prediction.ModelFiles;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Learning;
using PartsSignal.Pipeline.Running;
using PartsSignal.Pipeline.Words;
using PartsSignal.Reports.Components;
using PartsSignal.Reports.Phone;

namespace PartsSignal.Pipeline.Reporting;

/// <summary>Writes the phone page, and saves the facts that <c>lookup</c> needs. Runs after learning; without a model it writes nothing.</summary>
internal sealed class PhonePageStep : IRunStep
{
    /// <inheritdoc/>
    public string Name => "phone page";

    /// <inheritdoc/>
    public Task<long> RunAsync(RunContext context, CancellationToken cancellation)
    {
        if (!File.Exists(ModelStore.PathOf(context.Output)) || ReportMaker.LastDay(context.Database, context.Settings) is not { } asOf)
        {
            return Task.FromResult(0L);
        }

        LookupStore.Keep(context.Database, context.Output);
        LookupData data = PhonePageMaker.Create(context.Database, ModelStore.Read(context.Output), context.Settings, context.Input, asOf);
        File.WriteAllText(context.Output.LookupPage, LookupPage.Render(data), new UTF8Encoding(false));
        return Task.FromResult((long)data.Models.Count);
    }
}

/// <summary>Collects the phone page's data: the predictor's weights, models, words, parts, vans and checks.</summary>
internal static class PhonePageMaker
{
    private const int PartsCarried = 8;

    /// <summary>The page's data.</summary>
    /// <param name="database">A session over the store.</param>
    /// <param name="model">The predictor of the run.</param>
    /// <param name="settings">The shop.</param>
    /// <param name="input">Folder with the shop's own tables of words and checks.</param>
    /// <param name="asOf">Last day covered by the data.</param>
    public static LookupData Create(Database database, ShippedModel model, ShopSettings settings, string input, DateOnly asOf)
    {
        CheckTable checks = CheckTableReader.Load(input);
        LookupFacts facts = FactReader.Read(database, checks, []);
        IReadOnlyList<KeywordRule> rules = ShopComplaints.Rules(input, facts);
        IReadOnlyList<LookupKind> kinds = PhoneWords.Kinds(rules);
        IReadOnlyList<LookupModel> models = [.. database.Read<ModelRow>("queries/report/models.sql").Select(m => new LookupModel(m.ModelNumber, m.ModelFamily, m.ApplianceType, m.Brand))];
        IReadOnlyList<(string Key, Call Call)> typical = [.. Typical(models, kinds, new CallReader(facts, ShopComplaints.Table(input, facts), () => SerialCodes.None, (_, _, _) => null), asOf)];
        LookupWeights? weights = PhoneWeights.From(model);
        var costs = ShopAnswers.Options(settings);
        return new LookupData
        {
            Shop = settings.Shop,
            Currency = settings.Currency,
            AsOf = asOf,
            Needs = model.Needs,
            Weights = weights,
            Tables = weights is not null ? new Dictionary<string, IReadOnlyList<int>>() : Keyed(typical.Select(t => (t.Key, PerMille(model.Odds(t.Call))))),
            Models = models,
            Kinds = kinds,
            Phrases = PhoneWords.Phrases(rules),
            CommonWords = PhoneWords.Common(),
            ShortWords = PhoneWords.Short(),
            Negations = PhoneWords.Negations(ShopComplaints.Languages(facts)),
            Costs = new LookupCosts((double)costs.SecondVisitCost, (double)costs.HandlingCost, costs.LostShare, costs.ReturnShare),
            Parts = Parts(database, facts, settings.Currency),
            OnModel = OnModel(database),
            Checks = [.. checks.Checks.Select(c => new LookupCheck(
                c.ApplianceTypes, c.Complaints, c.Component, c.What, c.Minutes, c.Tool, c.Good, c.Bad, c.Opening, c.Finds, c.Share, c.Caution, c.First))],
            Openings = Openings(checks),
        };
    }

    /// <summary>One call of unknown age per family and complaint kind, and per appliance type and kind.</summary>
    private static IEnumerable<(string Key, Call Call)> Typical(IReadOnlyList<LookupModel> models, IReadOnlyList<LookupKind> kinds, CallReader reader, DateOnly day)
    {
        var families = models.Where(m => m.Type is not null).GroupBy(m => m.Family).Select(g => (Name: g.Key, Type: g.First().Type!, Family: (string?)g.Key));
        var types = models.Select(m => m.Type).OfType<string>().Distinct().Order(StringComparer.Ordinal).Select(t => (Name: t, Type: t, Family: (string?)null));
        foreach (var group in families.Concat(types))
        {
            foreach (LookupKind kind in kinds.Where(k => k.Types.Count == 0 || k.Types.Contains(group.Type)))
            {
                yield return ($"{group.Name}/{kind.Kind}", reader.Read(new CallQuestion { Model = group.Family, ApplianceType = group.Type, Complaint = kind.Kind }, day));
            }
        }
    }

    private static SortedDictionary<string, IReadOnlyDictionary<string, LookupOpening>> Openings(CheckTable checks) => new(
        checks.Openings.GroupBy(o => o.ApplianceType).ToDictionary(
            g => g.Key,
            g => (IReadOnlyDictionary<string, LookupOpening>)new SortedDictionary<string, LookupOpening>(
                g.ToDictionary(o => o.Opening, o => new LookupOpening(o.Minutes, o.Caution)), StringComparer.Ordinal)),
        StringComparer.Ordinal);

    private static IReadOnlyDictionary<string, IReadOnlyList<LookupPart>> Parts(Database database, LookupFacts facts, string currency)
    {
        ILookup<string, string> old = database.Read<OldNumber>("queries/report/old_numbers.sql").ToLookup(r => r.CurrentNumber, r => r.Replaced);
        var groups = database.Read<FamilyComponent>("queries/report/family_parts.sql");
        return Keyed(groups.Select(g => ($"{g.ModelFamily}/{g.Component}", (IReadOnlyList<LookupPart>)[.. facts.Parts(g.ModelFamily, g.Component)
            .OrderByDescending(p => p.Available).ThenByDescending(p => p.TimesSeen).ThenByDescending(p => p.Listed).ThenBy(p => p.PartNumber, StringComparer.Ordinal)
            .Take(PartsCarried)
            .Select(p => new LookupPart(
                p.PartNumber, p.Description, p.Quantity, p.Price, p.Available, p.TimesSeen, [.. old[p.PartNumber]],
                [.. facts.Vans(p.PartNumber).Select(v => new LookupHolding(v.Van, v.OnHand))], p.ReturnableDays is > 0)
            {
                Cost = p.Price is { } price ? MoneyFormat.Text(price, currency) : null,
            })])));
    }

    private static SortedDictionary<string, IReadOnlyDictionary<string, long>> OnModel(Database database) => new(
        database.Read<ModelPart>("queries/prediction/model_parts.sql")
            .GroupBy(r => r.ModelNumber)
            .ToDictionary(
                g => g.Key,
                g => (IReadOnlyDictionary<string, long>)new SortedDictionary<string, long>(
                    g.GroupBy(r => r.PartNumber).ToDictionary(p => p.Key, p => p.Sum(r => r.Jobs)), StringComparer.Ordinal)),
        StringComparer.Ordinal);

    private sealed record ModelRow(string ModelNumber, string ModelFamily, string? ApplianceType, string? Brand);

    private sealed record OldNumber(string CurrentNumber, [Column("old_number")] string Replaced);

    private sealed record FamilyComponent(string ModelFamily, string Component);

    private sealed record ModelPart(string ModelNumber, string PartNumber, long Jobs);

    private static IReadOnlyList<int> PerMille(double[] odds) => [.. odds.Select(o => (int)Math.Round(o * 1000))];

    private static SortedDictionary<string, IReadOnlyList<T>> Keyed<T>(IEnumerable<(string Key, IReadOnlyList<T> Value)> pairs)
    {
        var keyed = new SortedDictionary<string, IReadOnlyList<T>>(StringComparer.Ordinal);
        foreach ((string key, IReadOnlyList<T> value) in pairs)
        {
            keyed[key] = value;
        }

        return keyed;
    }
}
