namespace PartsSignal.SampleShop.World;

/// <summary>An invented maker.</summary>
/// <param name="Name">Its name.</param>
/// <param name="CodeLetter">Letter before its error codes.</param>
/// <param name="Serial">How its serial numbers tell the build date.</param>
internal sealed record Brand(string Name, string CodeLetter, SerialRule Serial)
{
    public static IReadOnlyList<Brand> ReadAll()
    {
        DataTable table = DataTable.Read("brands");
        return [.. table.Rows.Select(r => new Brand(
            table.Text(r, "brand"),
            table.Text(r, "code_letter"),
            new SerialRule(
                table.Text(r, "serial_rule"),
                table.Text(r, "pattern"),
                table.Text(r, "year_letters"),
                table.Text(r, "year_of_first").Length == 0 ? 0 : table.Whole(r, "year_of_first"),
                table.Text(r, "cycle_years").Length == 0 ? 0 : table.Whole(r, "cycle_years"),
                table.Text(r, "month_letters"))))];
    }

    /// <summary>The code the display shows for a group of faults.</summary>
    public string ErrorCode(int group) => CodeLetter switch
    {
        "F" => $"F0{group}",
        "H" => $"H{group}0",
        "C" => $"C-{group}",
        _ => $"{CodeLetter}{group}0",
    };
}
