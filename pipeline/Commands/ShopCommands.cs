using System.ComponentModel;
using System.Globalization;
using PartsSignal.Pipeline.Bench;
using PartsSignal.Pipeline.Core;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Options of the commands about a shop of the bench.</summary>
internal abstract class BenchShopSettings : CommandSettings
{
    [CommandOption("--shop <NAME>")]
    [Description("A shop of the bench; default: the one that is open")]
    public string? Shop { get; init; }

    [CommandOption("--home <FOLDER>")]
    [Description("Folder that keeps the shops; if not given, one in your local application data")]
    public string? Home { get; init; }

    /// <summary>The shops of this computer.</summary>
    public KnownShops Shops => new(Home ?? KnownShops.DefaultHome);

    /// <summary>The shop that is meant.</summary>
    /// <exception cref="BadInputException">There is no such shop.</exception>
    public ShopFolder Found() => (Shop is null ? Shops.Open : Shops.All.FirstOrDefault(s => s.Name.Equals(Shop, StringComparison.CurrentCultureIgnoreCase)))
        ?? throw new BadInputException(Shop is null ? "No shop is open. Start 'partssignal bench' and add one, or name one with --shop." : $"--shop {Shop}: there is no such shop. Shops: {string.Join(", ", Shops.All.Select(s => s.Name))}.");
}

/// <summary>Options of <c>undo</c>.</summary>
internal sealed class UndoSettings : BenchShopSettings
{
    [CommandOption("--to <N>")]
    [Description("Number of the update to go back to; without it, the updates are listed")]
    public int? To { get; init; }
}

/// <summary>Lists the last updates of a shop, or goes back to one.</summary>
internal sealed class UndoCommand(ProgramIo io) : AsyncCommand<UndoSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, UndoSettings settings, CancellationToken cancellationToken)
    {
        ShopFolder shop = settings.Found();
        var history = new ShopHistory(shop, io.Clock);
        io.Out.WriteLine($"Shop: {shop.Name}");
        if (settings.To is { } number)
        {
            await history.GoBackAsync(number, cancellationToken).ConfigureAwait(false);

            // The run is a command of its own: the files stay as they are now.
            new UpdateRollback(shop).End();
            io.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"The files are as they were at update {number}. Next: run --input \"{shop.Files}\" --out \"{shop.Output.Root}\""));
            return ExitCode.Done;
        }

        IReadOnlyList<HistoryEntry> entries = history.Entries;
        for (int i = 0; i < entries.Count; i++)
        {
            string changes = i + 1 < entries.Count ? string.Join(", ", history.Changes(entries[i])) : "first one kept";
            io.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{entries[i].Number,5}  {entries[i].At.ToLocalTime():yyyy-MM-dd HH:mm}  {entries[i].Rows,10:N0} rows  {changes}"));
        }

        io.Out.WriteLine(entries.Count == 0 ? "There is no update yet." : "Go back with undo --to N.");
        return ExitCode.Done;
    }
}

/// <summary>Options of <c>backup</c>.</summary>
internal sealed class BackupSettings : BenchShopSettings
{
    [CommandArgument(0, "<FILE>")]
    [Description("Zip file to write; it must not exist")]
    public string File { get; init; } = "";
}

/// <summary>Saves a shop in one zip.</summary>
internal sealed class BackupCommand(ProgramIo io) : Command<BackupSettings>
{
    public override int Execute(CommandContext context, BackupSettings settings, CancellationToken cancellationToken)
    {
        ShopFolder shop = settings.Found();
        if (File.Exists(settings.File))
        {
            throw new BadInputException($"{settings.File}: there is such a file already. Choose another name.");
        }

        using (FileStream zip = File.Create(settings.File + ".part"))
        {
            ShopBackup.Write(shop, zip);
        }

        File.Move(settings.File + ".part", settings.File);
        io.Out.WriteLine($"Shop: {shop.Name}");
        io.Out.WriteLine($"Saved {Path.GetFullPath(settings.File)}. It holds customers' names as typed: keep it in a safe place.");
        return ExitCode.Done;
    }
}

/// <summary>Options of <c>restore</c>.</summary>
internal sealed class RestoreSettings : CommandSettings
{
    [CommandArgument(0, "<FILE>")]
    [Description("Zip file that backup wrote")]
    public string File { get; init; } = "";

    [CommandOption("--home <FOLDER>")]
    [Description("Folder that keeps the shops; if not given, one in your local application data")]
    public string? Home { get; init; }
}

/// <summary>Opens a backup as a shop of its own.</summary>
internal sealed class RestoreCommand(ProgramIo io) : Command<RestoreSettings>
{
    public override int Execute(CommandContext context, RestoreSettings settings, CancellationToken cancellationToken)
    {
        if (!File.Exists(settings.File))
        {
            throw new BadInputException($"{settings.File}: there is no such file.");
        }

        using FileStream zip = File.OpenRead(settings.File);
        ShopFolder shop = ShopBackup.Restore(new KnownShops(settings.Home ?? KnownShops.DefaultHome), zip);
        io.Out.WriteLine($"Shop: {shop.Name}");
        io.Out.WriteLine($"Its files are in {shop.Files}. Next: run --input \"{shop.Files}\" --out \"{shop.Output.Root}\"");
        return ExitCode.Done;
    }
}
