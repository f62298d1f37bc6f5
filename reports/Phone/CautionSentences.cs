using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Phone;

/// <summary>The cautions of an answer as sentences, each thing said once.</summary>
internal static class CautionSentences
{
    private const string Heading = "Before you open it: ";

    // What the shipped cautions say, where several say the same in other words. A sentence of the shop's own is always kept.
    private static readonly Dictionary<string, string> Says = new(StringComparer.Ordinal)
    {
        ["Unplug it or turn off the breaker, close both faucets, and prove it dead with a meter just tried on a live point."] = "power water dead meter",
        ["Unplug it or turn off the breaker, close the gas shutoff on gas models, and prove it dead with a meter just tried on a live point."] = "power shutoff dead meter",
        ["Unplug it, prove it dead with a meter just tried on a live point, and discharge the motor capacitor."] = "power dead meter charge",
        ["Unplug it or turn off the breaker, shut off water and gas, and prove it dead with a meter just tried on a live point."] = "power water shutoff dead meter",
        ["Unplug or switch off at the panel, then prove it dead with a meter you have just tried on a live point."] = "power dead meter",
        ["Motor capacitors hold a charge: discharge through a resistor, not a screwdriver, before you touch the terminals."] = "charge resistor",
        ["Heaters stay hot and capacitors stay charged."] = "heat charge",
        ["Unplug it and keep the plug in sight, then discharge the high-voltage capacitor as the service sheet says."] = "power sight charge sheet",
        ["The high-voltage side can kill long after it is unplugged."] = "highvoltage kill",
        ["Gas work belongs to a licensed gas technician."] = "gas",
        ["Opening the sealed system belongs to a technician certified for refrigerants."] = "sealed",
        ["Leave gas, sealed systems and high voltage to those licensed for them."] = "gas sealed licensed all",
        ["Leave gas, sealed systems and microwave high voltage to those licensed for them."] = "gas sealed licensed",
        [Power] = "power water dead",
        [OnlyWater] = "water",
        ["Capacitors and microwave high-voltage parts hold a charge."] = "charge highvoltage",
        ["Gas and sealed-system work only by those licensed for it."] = "gas sealed",
    };

    private const string Power = "Before any cabinet is opened: disconnect power and water, and prove it dead.";
    private const string OnlyWater = "Shut off the water too, where there is any.";

    /// <summary>The sentences that the table knows, for a test that each is still said somewhere.</summary>
    internal static IEnumerable<string> Known => Says.Keys.Except([OnlyWater]);

    /// <summary>The sentences in order, without those whose every word of warning the others give too: steps share much of their cautions.</summary>
    public static IReadOnlyList<string> Of(IReadOnlyList<string> cautions)
    {
        List<string> kept = [.. cautions.SelectMany(Sentences).Select(WithoutHeading).Distinct(StringComparer.Ordinal)];

        // From the end: the general ones stand there, and the particular ones say more.
        for (int i = kept.Count - 1; i >= 0; i--)
        {
            string[] left = [.. Of(kept[i]).Except(kept.Where((_, k) => k != i).SelectMany(Of))];
            if (Says.ContainsKey(kept[i]) && left.Length == 0)
            {
                kept.RemoveAt(i);
            }
            else if (kept[i] == Power && left is ["water"])
            {
                kept[i] = OnlyWater;
            }
        }

        return kept;
    }

    private static string[] Of(string sentence) => Says.TryGetValue(sentence, out string? says) ? says.Split(' ') : [];

    // The list stands under that heading already.
    private static string WithoutHeading(string sentence)
    {
        string rest = sentence.StartsWith(Heading, StringComparison.Ordinal) ? Format.Capital(sentence[Heading.Length..]) : sentence;
        return rest.EndsWith('.') ? rest : rest + ".";
    }

    // A sentence ends with a full stop before a capital letter; "230 V." within one does not.
    private static IEnumerable<string> Sentences(string text)
    {
        int start = 0;
        for (int i = 0; i + 2 < text.Length; i++)
        {
            if (text[i] == '.' && text[i + 1] == ' ' && char.IsUpper(text[i + 2]))
            {
                yield return text[start..(i + 1)];
                start = i + 2;
            }
        }

        yield return text[start..];
    }
}
