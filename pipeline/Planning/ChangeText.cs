using PartsSignal.Analysis.VanPlan;

namespace PartsSignal.Pipeline.Planning;

/// <summary>Steps of a plan in words.</summary>
internal static class ChangeText
{
    public static string Action(ChangeAction action) => action switch
    {
        ChangeAction.Keep => "keep",
        ChangeAction.Replace => "use up, then replace",
        ChangeAction.Add => "add",
        ChangeAction.MoveOut => "move to",
        ChangeAction.MoveIn => "move from",
        ChangeAction.SendBack => "send back",
        _ => "take off",
    };
}
