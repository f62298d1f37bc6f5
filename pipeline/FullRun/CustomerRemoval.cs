using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Publishing;
using PartsSignal.Pipeline.Running;
using PartsSignal.Pipeline.Staging;
using PartsSignal.Pipeline.Understanding;

namespace PartsSignal.Pipeline.FullRun;

/// <summary>
/// Takes a customer out: the identifiers go on the list of those whom every load leaves out, everything is read again, and
/// the store before is dropped. The jobs stay, without who they were for and what was said.
/// </summary>
internal static class CustomerRemoval
{
    /// <summary>Finds a customer in the shop's files. Nothing is changed.</summary>
    /// <param name="input">Folder with the shop's files.</param>
    /// <param name="output">Folder of the store.</param>
    /// <param name="customer">Name, phone number or address as in the files.</param>
    /// <param name="cancellation">Stops.</param>
    /// <returns>How many rows and files name the customer; at least one.</returns>
    /// <exception cref="BadInputException">Nothing was typed, or no row names such a customer.</exception>
    public static FoundCustomer Find(string input, OutputFolder output, string? customer, CancellationToken cancellation)
    {
        if (string.IsNullOrWhiteSpace(customer))
        {
            throw new BadInputException("Give the customer's name, phone number or address.");
        }

        (ShopSettings shop, _) = ProposedMaps.Complete(input, ShopFile.Load(input), cancellation);
        FoundCustomer found = CustomerSearch.Find(SourceFile.Find(input, SheetMaps.Apply(input, shop, cancellation).Settings), shop, IdentityKey.LoadOrMake(output.Key), customer, cancellation);
        return found.Rows > 0 ? found : throw new BadInputException("No row of the shop's files has that name, phone number or address. Type it as it stands there.");
    }

    /// <summary>Finds a customer in the shop's files and puts the identifiers on the list. The next load leaves the customer out.</summary>
    /// <param name="input">Folder with the shop's files.</param>
    /// <param name="output">Folder of the store.</param>
    /// <param name="customer">Name, phone number or address as in the files.</param>
    /// <param name="cancellation">Stops.</param>
    /// <returns>How many rows and files name the customer; at least one.</returns>
    /// <exception cref="BadInputException">Nothing was typed, or no row names such a customer.</exception>
    public static FoundCustomer Mark(string input, OutputFolder output, string? customer, CancellationToken cancellation)
    {
        FoundCustomer found = Find(input, output, customer, cancellation);
        ForgottenCustomers.Load(output.Forgotten, IdentityKey.LoadOrMake(output.Key)).With(found.Identifiers).Save(output.Forgotten);
        return found;
    }

    /// <summary>Drops the store before this one, which is kept for readers and still knows the customer.</summary>
    public static async Task DropPreviousAsync(OutputFolder output, TimeProvider clock, CancellationToken cancellation)
    {
        using (await OutputTransaction.BeginAsync(output, clock, cancellation).ConfigureAwait(false))
        {
            new StoreSwap(output.Store).DropPrevious();
        }
    }
}
