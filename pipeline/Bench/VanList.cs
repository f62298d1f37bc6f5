using System.Globalization;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Bench;

/// <summary>A line of a van's list.</summary>
/// <param name="Action">What to do, as the plan stores it.</param>
/// <param name="OtherVan">The van it goes to or comes from, or empty.</param>
/// <param name="PartNumber">The number on the piece.</param>
/// <param name="NewNumber">The number that replaced it, or empty if it is current.</param>
/// <param name="Description">Its name.</param>
/// <param name="Quantity">How many.</param>
/// <param name="Money">What they cost.</param>
/// <param name="PriceKnown">False: no price list has it, so the cost is a guess.</param>
/// <param name="Supplier">Who sells it or takes it back, or empty.</param>
/// <param name="By">Last day to send it back, or empty.</param>
internal sealed record VanLine(string Action, string OtherVan, string PartNumber, string NewNumber, string Description, int Quantity, decimal Money, bool PriceKnown, string Supplier, string By)
{
    /// <summary>Price of one, or null if not known.</summary>
    public decimal? Price => PriceKnown ? Money / Quantity : null;

    /// <summary>What it is, with what a person must know who holds it.</summary>
    public string What => Description + (NewNumber.Length == 0 ? "" : $" (new number {NewNumber})") + (By.Length == 0 ? "" : $", by {By}");
}

/// <summary>What to do with one van, to print and tick off.</summary>
/// <param name="Van">The van.</param>
/// <param name="Lines">The lines, in the order of work.</param>
/// <param name="CountedOn">Day of the count that the list starts from, or null if not known.</param>
/// <param name="Pieces">Pieces of the whole planned load.</param>
/// <param name="Money">What the whole planned load costs.</param>
internal sealed record VanList(string Van, IReadOnlyList<VanLine> Lines, DateOnly? CountedOn, int Pieces, decimal Money)
{
    private const string Keep = "keep";
    private const string Refused = "no plan: ";

    /// <summary>Pieces to add.</summary>
    public int Added => Lines.Where(l => l.Action == "add").Sum(l => l.Quantity);

    /// <summary>What the pieces to add cost.</summary>
    public decimal Cost => Lines.Where(l => l.Action == "add").Sum(l => l.Money);

    /// <summary>True when the list is nothing but pieces to add: the van holds nothing that the plan knows of.</summary>
    public bool IsWholeLoad => Lines.All(l => l.Action == "add");

    /// <summary>False where no line names a supplier, so that a column for them would be empty.</summary>
    public bool NamesSuppliers => Lines.Any(l => l.Supplier.Length > 0);

    /// <summary>Vans that the last update made a list for.</summary>
    /// <param name="results">Folder of the result tables.</param>
    public static IReadOnlyList<string> Vans(string results) => [.. ResultCsv.Read(Changes(results), csv => csv.GetString("van")).Distinct(StringComparer.Ordinal)];

    /// <summary>The lists of the last update; what stays as it is comes last.</summary>
    /// <param name="results">Folder of the result tables.</param>
    /// <param name="countedOn">Day of the newest count of each counted van.</param>
    public static IReadOnlyList<VanList> All(string results, IReadOnlyDictionary<string, DateOnly?> countedOn)
    {
        var loads = ResultCsv.Read(
            Path.Combine(results, "van_summary.csv"),
            csv => (Van: csv.GetString("van"), Pieces: int.Parse(csv.GetString("pieces"), CultureInfo.InvariantCulture), Money: Amount(csv.GetString("money_used")))).ToLookup(v => v.Van, StringComparer.Ordinal);
        HashSet<string> guessed = [.. ResultCsv.Read(Path.Combine(results, "van_plan.csv"), csv => (Part: csv.GetString("part_number"), Known: csv.GetString("price_known"))).Where(p => p.Known == "false").Select(p => p.Part)];
        var lines = ResultCsv.Read(Changes(results), csv => (Van: csv.GetString("van"), Line: new VanLine(
            csv.GetString("action"), csv.GetString("other_van"), csv.GetString("label") is { Length: > 0 } label ? label : csv.GetString("part_number"),
            csv.GetString("label").Length > 0 ? csv.GetString("part_number") : "", csv.GetString("description"),
            int.Parse(csv.GetString("quantity"), CultureInfo.InvariantCulture), Amount(csv.GetString("money")), !guessed.Contains(csv.GetString("part_number")), csv.GetString("supplier"), Day(csv.GetString("by")))));
        return
        [
            .. lines.GroupBy(l => l.Van).Select(v => new VanList(
                v.Key, [.. v.Select(l => l.Line).OrderBy(l => l.Action == Keep)], countedOn.GetValueOrDefault(v.Key), loads[v.Key].FirstOrDefault().Pieces, loads[v.Key].FirstOrDefault().Money)),
        ];
    }

    /// <summary>Why the last update made no list, a sentence; for a shop of which there is none.</summary>
    /// <param name="results">Folder of the result tables.</param>
    public static string WhyNone(string results)
    {
        string[] answers = [.. ResultCsv.Read(Path.Combine(results, "van_summary.csv"), csv => csv.GetString("answer")).Distinct(StringComparer.Ordinal)];
        string[] reasons = answers.Length > 0
            ? [.. answers.Select(a => a.StartsWith(Refused, StringComparison.Ordinal) ? a[Refused.Length..] : a)]
            : ["no recent finished job tells which parts it needed. Add the part numbers of the parts you fit, in the job log or as a list of parts per job"];
        return $"No van list was made: {string.Join("; ", reasons)}.";
    }

    /// <summary>Heading of the lines with one action.</summary>
    /// <param name="action">The action, as stored.</param>
    /// <param name="otherVan">The other van of a move, in words.</param>
    public static string Heading(string action, string otherVan) => action switch
    {
        Keep => "Keep",
        "replace" => "Keep and use up first: old number",
        "add" => "Add",
        "move_out" => "Give to " + otherVan,
        "move_in" => "Take from " + otherVan,
        "send_back" => "Send back to the supplier",
        _ => "Take off",
    };

    private static string Changes(string results) => Path.Combine(results, "van_changes.csv");

    private static string Day(string text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) ? PageText.Day(day) : text;

    private static decimal Amount(string text) => decimal.TryParse(text, NumberStyles.Number, CultureInfo.InvariantCulture, out decimal money) ? money : 0;
}
