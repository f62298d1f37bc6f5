namespace PartsSignal.Pipeline.Commands;

/// <summary>Shells the script is for.</summary>
public enum Shell
{
    /// <summary>bash.</summary>
    Bash,

    /// <summary>zsh.</summary>
    Zsh,
}
