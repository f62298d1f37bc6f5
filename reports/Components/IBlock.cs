namespace PartsSignal.Reports.Components;

/// <summary>A part of a section: a paragraph, a table, a plot, a caution, or a note on what is missing.</summary>
public interface IBlock
{
    /// <summary>Draws it.</summary>
    /// <param name="currency">The shop's currency mark.</param>
    Node Draw(string currency);
}
