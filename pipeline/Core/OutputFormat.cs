namespace PartsSignal.Pipeline.Core;

/// <summary>How a command prints its tables.</summary>
internal enum OutputFormat
{
    /// <summary>For people: at most 80 columns wide.</summary>
    Table,

    /// <summary>Comma-separated, for spreadsheets.</summary>
    Csv,

    /// <summary>JSON, for programs.</summary>
    Json,
}
