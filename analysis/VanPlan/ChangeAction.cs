namespace PartsSignal.Analysis.VanPlan;

/// <summary>What to do with pieces on the way from what is aboard to the plan.</summary>
public enum ChangeAction
{
    /// <summary>Aboard and wanted.</summary>
    Keep,

    /// <summary>Aboard under an old number: use it up first; what replaces it on the van is the current number.</summary>
    Replace,

    /// <summary>Wanted, to be ordered.</summary>
    Add,

    /// <summary>Goes to another van that needs it.</summary>
    MoveOut,

    /// <summary>Comes from another van that does not need it.</summary>
    MoveIn,

    /// <summary>Not wanted; goes back to the supplier while it still takes it.</summary>
    SendBack,

    /// <summary>Not wanted; goes to the shop's shelf.</summary>
    TakeOff,
}
