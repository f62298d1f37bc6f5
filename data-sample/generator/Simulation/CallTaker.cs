using PartsSignal.SampleShop.Chance;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Simulation;

/// <summary>The office on the phone: what of a call ends up in the log.</summary>
internal sealed class CallTaker(ComplaintWriter complaints, Dice dice)
{
    /// <summary>Takes a call about a failed cause.</summary>
    /// <param name="unit">The appliance.</param>
    /// <param name="cause">What is wrong with it.</param>
    /// <param name="day">Day of the call.</param>
    public CallNote Take(Unit unit, FamilyCause cause, int day)
    {
        string shown = ComplaintOdds.Shown(unit.Family, cause.Cause.Odds[dice.Weighted([.. cause.Cause.Odds.Select(o => o.Share)])].Name);
        double vague = dice.Uniform();
        string kind = vague < ComplaintOdds.EmptyShare ? ComplaintOdds.NoKind
            : vague < ComplaintOdds.EmptyShare + ComplaintOdds.VagueShare ? ComplaintOdds.VagueKind
            : shown;
        int group = CodeGroup(unit.Family, cause.Cause, kind);
        string code = group == 0 ? "" : TypeCode(unit.Family.Brand.ErrorCode(group));
        (string text, string planted) = complaints.Write(unit.Family.Type, kind, dice.Chance(0.75) ? code : "", unit.Owner, dice);
        bool contract = unit.Owner.IsContract;
        return new CallNote(
            shown,
            kind,
            text,
            group,
            code,
            TypeBrand(unit.Family.Brand.Name),
            TypeModel(unit.Model.Number),
            dice.Chance(contract ? 0.95 : 0.70) ? unit.Serial : "",
            !contract && dice.Chance(0.15) ? unit.InstalledDay : null,
            !contract && dice.Chance(0.20) ? (int)Math.Round(unit.AgeOn(day), MidpointRounding.AwayFromZero) : null,
            planted);
    }

    /// <summary>The same caller again: it came back.</summary>
    public CallNote TakeAgain(Unit unit, CallNote before, int day)
    {
        (string text, string planted) = complaints.Write(
            unit.Family.Type, before.ComplaintKind, dice.Chance(0.75) ? before.ErrorCode : "", unit.Owner, dice);
        return before with
        {
            Text = dice.Chance(0.3) && text.Length > 0 ? $"same again, {text}" : text,
            Planted = planted,
            ModelTyped = TypeModel(unit.Model.Number),
            SerialTyped = dice.Chance(unit.Owner.IsContract ? 0.95 : 0.70) ? unit.Serial : "",
            StatedAge = before.StatedAge is null ? null : (int)Math.Round(unit.AgeOn(day), MidpointRounding.AwayFromZero),
        };
    }

    private int CodeGroup(ModelFamily family, Cause cause, string kind)
    {
        if (!dice.Chance(ComplaintOdds.CodeGiven(family, cause, kind)))
        {
            return 0;
        }

        Span<double> weights = stackalloc double[ComplaintOdds.CodeGroups];
        for (int g = 1; g <= ComplaintOdds.CodeGroups; g++)
        {
            weights[g - 1] = ComplaintOdds.CodeIs(cause, g);
        }

        return dice.Weighted(weights) + 1;
    }

    private string TypeCode(string code) => dice.Below(8) switch
    {
        0 => code.ToLowerInvariant(),
        1 => code.Replace("0", "O", StringComparison.Ordinal),
        2 => $"{code[0]} {code[1..]}",
        _ => code,
    };

    private string TypeBrand(string brand) => dice.Below(40) switch
    {
        0 => "",
        1 => brand.ToLowerInvariant(),
        2 => brand.ToUpperInvariant(),
        3 => brand[..^1],
        _ => brand,
    };

    private string TypeModel(string model)
    {
        double luck = dice.Uniform();
        if (luck < 0.08)
        {
            return "";
        }

        if (luck < 0.20)
        {
            return new string([.. model.Where(char.IsAsciiLetterOrDigit)]);
        }

        if (luck < 0.27)
        {
            return model.Replace('0', 'O');
        }

        if (luck < 0.33)
        {
            return model.ToLowerInvariant();
        }

        if (luck < 0.37)
        {
            int[] digits = [.. Enumerable.Range(0, model.Length).Where(i => char.IsAsciiDigit(model[i]))];
            return model.Remove(dice.Pick(digits), 1);
        }

        return model;
    }
}
