using System.Globalization;

namespace PartsSignal.Pipeline.Bench;

/// <summary>A mark beside a shop's folders while its figures are updated. One that outlives the program says that it was cut off.</summary>
/// <param name="shop">The shop.</param>
internal sealed class UpdateMark(ShopFolder shop)
{
    private const string Back = "back";

    private string PathOf => Path.Combine(shop.Folder, "update-pending.txt");

    /// <summary>What to tell about an update that was cut off, or null if none was.</summary>
    public string? InterruptedMessage =>
        !File.Exists(PathOf) || File.ReadAllText(PathOf).Split(' ') is not [var what, var stamp] || stamp != shop.FiguresStamp.ToString(CultureInfo.InvariantCulture) ? null
        : what == Back ? "Going back was cut off when the program ended. Your files and figures are as they were before. Go back again under Earlier updates."
        : "The last update was cut off when the program ended. Nothing was changed. Update the figures again.";

    /// <summary>An update begins.</summary>
    /// <param name="goesBack">True when it goes back to an earlier one.</param>
    public void Begin(bool goesBack) => File.WriteAllText(PathOf, string.Create(CultureInfo.InvariantCulture, $"{(goesBack ? Back : "update")} {shop.FiguresStamp}"));

    /// <summary>It ended, well or not.</summary>
    public void End() => File.Delete(PathOf);
}
