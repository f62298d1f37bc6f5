namespace PartsSignal.Pipeline.Commands;

/// <summary>Shells the script is for.</summary>
internal enum Shell
{
    /// <summary>bash.</summary>
    Bash,

    /// <summary>zsh.</summary>
    Zsh,
}
