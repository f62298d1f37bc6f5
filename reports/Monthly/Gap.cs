using PartsSignal.Analysis.Sql;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>Something missing on jobs.</summary>
/// <param name="What">What is missing.</param>
/// <param name="Jobs">Jobs that lack it.</param>
/// <param name="Of">Failure calls that are not still open.</param>
/// <param name="BroughtBack">Jobs that would count for at least one more answer with it alone; the others lack more than this.</param>
/// <param name="Answers">Those answers, each with the jobs it would gain; empty if there are none.</param>
/// <param name="Fix">What to do.</param>
internal sealed record Gap(string What, long Jobs, long Of, long BroughtBack, string Answers, string Fix)
{
    /// <summary>The one answer among them, or null if there are none or several.</summary>
    public string? OnlyAnswer { get; init; }

    private sealed record Lack(
        string Gap, bool IsHalfTold, long Missing, long Expected, long BroughtBack,
        long Rates, long Families, long Odds, long Ages, long Curves, long Plan, long Callbacks, long FirstVisits);

    /// <summary>What is missing, what brings back most answers first.</summary>
    public static IReadOnlyList<Gap> Read(Database database)
    {
        database.Run("macros/told_part_lines.sql");
        return [.. database.Read<Lack>("queries/report/gaps.sql").Select(Describe)];
    }

    /// <summary>What to fill in first, what it would bring back, and how; or null if no single thing would bring a job back.</summary>
    public static string? First(IReadOnlyList<Gap> gaps) => gaps is [{ BroughtBack: > 0 } first, ..]
        ? $"Fill in first: {first.What}. With that filled in, {Format.Count(first.BroughtBack)} of {Format.Count(first.Of)} jobs would {(first.OnlyAnswer is { } only ? $"also count for {only}" : $"count in more of your figures ({first.Answers})")}. {first.Fix}"
        : null;

    private static Gap Describe(Lack lack)
    {
        (string what, string fix) = (lack.Gap, lack.IsHalfTold) switch
        {
            ("outcome", true) => ("how the job ended", "You already record the closing day. Record the outcome or the part fitted too."),
            ("outcome", _) => ("how the job ended", "Write down the outcome, or the part fitted and the closing day."),
            ("closing", _) => ("the closing day", "These jobs say how they ended. Write down the day they were finished."),
            ("component", _) => ("the part fitted", "Write down which part was fitted, or that none was needed."),
            ("part", _) => ("a part that can be recognized", "Answer the open questions about part numbers, or write down what the part is."),
            ("part_number", true) => ("a part number that is in the catalog", "Answer the open questions about part numbers, or add these numbers to your price list."),
            ("part_number", _) => ("a part number that is in the catalog", "Write down the part number."),
            ("price", _) => ("what the parts cost", "Add a price list, or orders with prices."),
            ("type", true) => ("the type of appliance", "Add these models to the model list with their type."),
            ("type", _) => ("the type of appliance", "Write down the type of appliance or the model number."),
            ("family", true) => ("the model family", "Add these models to the model list, or answer the open questions about models."),
            ("family", _) => ("the model family", "Write down the model number."),
            ("complaint", _) => ("the complaint", "Write down what the customer said."),
            ("complaint_kind", _) => ("a complaint that can be recognized", "Answer the open questions about complaints: say what the customers' words mean."),
            ("unit", true) => ("which appliance it was", "You already record the customer. Record the serial number or the model too."),
            ("unit", _) => ("which appliance it was", "Write down the serial number, or the customer and the model."),
            ("age", true) => ("the age of the appliance", "You already record which appliance it was. Give its build or purchase date in a register, or the rule for dates in serial numbers."),
            ("age", _) => ("the age of the appliance", "Write down the serial number or the year of purchase."),
            ("van", true) => ("the van", "You already record the technician. Say in the settings who drives which van."),
            ("van", _) => ("the van", "Write down the van or the technician."),
            ("visits", _) => ("the number of visits", "Write down how many visits the job took."),
            _ => (Format.Words(lack.Gap), ""),
        };
        (long Jobs, string Name)[] answers =
        [
            (lack.Rates, "failure rates"), (lack.Families, "model families"), (lack.Odds, "odds"), (lack.Ages, "rates by age"), (lack.Curves, "age curves"),
            (lack.Plan, "the van plan"), (lack.Callbacks, "callbacks"), (lack.FirstVisits, "first visits"),
        ];
        (long Jobs, string Name)[] gained = [.. answers.Where(a => a.Jobs > 0)];
        return new Gap(what, lack.Missing, lack.Expected, lack.BroughtBack, string.Join(", ", gained.Select(a => $"{Format.Count(a.Jobs)} for {a.Name}")), fix)
        {
            OnlyAnswer = gained is [var only] ? only.Name : null,
        };
    }
}
