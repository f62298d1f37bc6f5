using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Staging;

/// <summary>What was found of a customer.</summary>
/// <param name="Rows">Rows of the shop's files.</param>
/// <param name="Files">Files with such rows.</param>
/// <param name="Identifiers">Identifiers by which the rows are known from now on.</param>
internal sealed record FoundCustomer(long Rows, int Files, IReadOnlyCollection<string> Identifiers)
{
    /// <summary>Those of <see cref="Rows"/> that stand in a job log.</summary>
    public long JobRows { get; init; }
}

/// <summary>Looks for a customer in the files of a shop by keyed hashes of phone, address and name.</summary>
internal static class CustomerSearch
{
    /// <summary>Finds the rows of a customer. A row found by name or address brings its phone number along, so that the customer's other rows are found too.</summary>
    /// <param name="sources">The files; one that cannot be read is left out.</param>
    /// <param name="settings">Limits of reading.</param>
    /// <param name="key">The shop's key.</param>
    /// <param name="text">Name, phone number or address.</param>
    /// <param name="cancellation">Stops.</param>
    public static FoundCustomer Find(IReadOnlyList<SourceFile> sources, ShopSettings settings, IdentityKey key, string text, CancellationToken cancellation)
    {
        HashSet<string> wanted = new(ForgottenCustomers.Identifiers(key, text), StringComparer.Ordinal);
        HashSet<string> phones = new(StringComparer.Ordinal);
        Scan((row, phone) =>
        {
            if (row.Any(wanted.Contains) && phone is not null)
            {
                phones.Add(phone);
            }

            return false;
        });
        wanted.UnionWith(phones);
        (long rows, int files, long jobRows) = Scan((row, _) => row.Any(wanted.Contains));
        return new FoundCustomer(rows, files, wanted) { JobRows = jobRows };

        (long Rows, int Files, long JobRows) Scan(Func<IReadOnlyList<string>, string?, bool> take)
        {
            (long rows, int files, long jobRows) = (0, 0, 0);
            foreach (SourceFile source in sources)
            {
                long own = ScanFile(source, settings, key, take, cancellation);
                rows += own;
                files += own > 0 ? 1 : 0;
                jobRows += source.Map.Kind == "jobs" ? own : 0;
            }

            return (rows, files, jobRows);
        }
    }

    private static long ScanFile(SourceFile source, ShopSettings settings, IdentityKey key, Func<IReadOnlyList<string>, string?, bool> take, CancellationToken cancellation)
    {
        long rows = 0;
        try
        {
            var scan = ContentScan.Read(source.File, settings.Limits, cancellation);
            using OpenedTable table = OpenedTable.Open(source.File, scan, source.Map, settings.Limits);
            var customer = new CustomerColumns(new FieldMap(source.File.Name, source.Map, table.Header));
            while (customer.IsAny && table.Reader.Read())
            {
                cancellation.ThrowIfCancellationRequested();
                (string phone, string address, string name) = customer.Texts(table.Reader.Row);
                string? number = PlaceText.Parse(phone, [], []) is null ? null : ForgottenCustomers.Identifiers(key, phone, [], [])[0];
                rows += take(ForgottenCustomers.Identifiers(key, phone, address, name), number) ? 1 : 0;
            }
        }
        catch (FileRefusedException)
        {
            return rows;
        }

        return rows;
    }
}
