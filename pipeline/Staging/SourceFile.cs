using System.Globalization;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Rejects;

namespace PartsSignal.Pipeline.Staging;

/// <summary>A file together with the map that says how to read it.</summary>
/// <param name="File">The file.</param>
/// <param name="Map">Its map.</param>
/// <param name="Order">Position among all sources; see <see cref="StagedFile.SourceOrder"/>.</param>
internal sealed record SourceFile(InputFile File, SourceMap Map, int Order)
{
    /// <summary><see cref="OwnName"/> of the source whose mended rejects this file holds, or null if it is a source itself.</summary>
    public string? Mends { get; init; }

    /// <summary>
    /// Name of the file, under which its refused rows are kept; for a mended file the name it mends, with
    /// <c>.again</c> behind it, so that its refused rows can be mended in their turn. Where several sources read the
    /// same file, the kind follows, and a number where even that is the same. Where a map names no sheet, its first sheet goes
    /// by the name that it has when it is read alone, so that what was mended then is found again.
    /// </summary>
    public string OwnName { get; init; } = File.Name;

    /// <summary>Most files of one pattern.</summary>
    public const int MostFilesPerMap = 5_000;

    /// <summary>How often rows of a source can be refused, mended, and loaded again as a file of their own.</summary>
    public const int MostRounds = 4;

    /// <summary>
    /// Positions of one pattern: its files, then their mended rejects, then their mended lines of unknown jobs, then the
    /// same two for each of these, and so on for every round.
    /// </summary>
    public const int PositionsPerMap = ((2 << MostRounds) - 1) * MostFilesPerMap;

    /// <summary>All files that the shop's maps name, in order.</summary>
    /// <exception cref="BadInputException">A map names no file, or a file may not be read; all faults together.</exception>
    public static IReadOnlyList<SourceFile> Find(string folder, ShopSettings settings)
    {
        var files = new InputFiles(folder, settings.Limits);
        var found = new List<SourceFile>();
        var faults = new List<string>();
        for (int i = 0; i < settings.Sources.Count; i++)
        {
            SourceMap map = settings.Sources[i];
            try
            {
                IReadOnlyList<InputFile> matches = files.Find(map.Files);
                if (matches.Count == 0)
                {
                    faults.Add($"shop.json: sources[{i}].files: no file in {folder} is named '{map.Files}'.");
                }

                if (matches.Count > MostFilesPerMap)
                {
                    faults.Add($"shop.json: sources[{i}].files: '{map.Files}' names {matches.Count} files; the limit is {MostFilesPerMap}. Use several patterns, one a folder or a year.");
                    continue;
                }

                found.AddRange(matches.Select((f, n) => new SourceFile(f, map, (i * PositionsPerMap) + n)));
            }
            catch (BadInputException bad)
            {
                faults.AddRange(bad.Faults);
            }
        }

        if (settings.Sources.Count == 0)
        {
            faults.Add($"{folder}: none of its files looks like a job log, an order list or a price list. Run 'partssignal inspect' on the folder to see why.");
        }

        if (faults.Count > 0)
        {
            throw new BadInputException(faults);
        }

        // What is mended goes by the name of its source, so sources are named first.
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        SourceFile[] round = Named(found, taken);
        var all = new List<SourceFile>(round);
        for (int i = 0; i < MostRounds; i++)
        {
            round = Named([.. round.SelectMany(s => Mended(files, s))], taken);
            all.AddRange(round);
        }

        return all;
    }

    // No two go by names that would be one name in the rejects folder.
    private static SourceFile[] Named(IReadOnlyList<SourceFile> sources, HashSet<string> taken)
    {
        var readers = sources.Where(s => !s.Map.IsFurtherSheet).CountBy(s => s.File.Name, StringComparer.Ordinal).ToDictionary(StringComparer.Ordinal);
        var named = new SourceFile[sources.Count];
        foreach ((int at, SourceFile s) in sources.Index().OrderBy(s => s.Item.Map.IsFurtherSheet))
        {
            named[at] = s with { OwnName = Free(!s.Map.IsFurtherSheet && readers[s.File.Name] == 1 ? Plain(s) : $"{Plain(s)}.{s.Map.Kind}") };
        }

        return named;

        static string Plain(SourceFile source) => source.Mends is null ? source.File.Name : RejectFile.MendedAgain(source.File.Name);

        string Free(string name)
        {
            string free = name;
            for (int n = 2; !taken.Add(RejectFile.NameOf(free)); n++)
            {
                free = string.Create(CultureInfo.InvariantCulture, $"{name}.{n}");
            }

            return free;
        }
    }

    // A file for mending has the columns of its source, whatever form the source had.
    private static IEnumerable<SourceFile> Mended(InputFiles files, SourceFile source)
    {
        // Two kinds of mended files come of each file: they are numbered as the nodes of a tree.
        int within = source.Order % PositionsPerMap;
        int node = within / MostFilesPerMap;
        return new[] { RejectFile.NameOf(source.OwnName), RejectFile.NameOfUnknownJobs(source.OwnName) }.Index().SelectMany(named =>
            files.Find($"{RejectFile.MendedFolder}/{named.Item}").Select(f => new SourceFile(
                f,
                source.Map with { Files = f.Name, Sheet = null, IsFurtherSheet = false, Encoding = "utf-8", Separator = "comma", HeaderLine = 1 },
                source.Order + ((node + named.Index + 1) * MostFilesPerMap))
            { Mends = source.Mends ?? source.OwnName }));
    }
}
