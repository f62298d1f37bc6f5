using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using PartsSignal.Analysis.CrossReference;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Staging;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.DateCodes;

/// <summary>
/// Learns date codes from a shop's own files before they are staged, because staging keeps no serial. What was learned is
/// kept, without the serials, until one of the files or the given rules change.
/// </summary>
/// <param name="output">The output folder.</param>
/// <param name="settings">What <c>shop.json</c> says.</param>
/// <param name="given">The rules that the shop gives.</param>
internal sealed class DateCodeSearch(OutputFolder output, ShopSettings settings, SerialCodes given)
{
    /// <summary>Name of the file, in the folder of staged files, that keeps what was learned.</summary>
    public const string FileName = "date-codes.json";

    // Raised whenever the same files would teach other rules than before.
    private const int Version = 1;

    /// <summary>Learns.</summary>
    /// <param name="sources">All files of the shop. Those that cannot date a serial are not opened.</param>
    /// <param name="cancellation">Stops.</param>
    public IReadOnlyList<LearnedDateCode> Run(IReadOnlyList<SourceFile> sources, CancellationToken cancellation)
    {
        (SourceFile Source, ContentScan Scan)[] files = [.. sources.Where(DatedSerialReader.CanDate).Select(s => (s, Scan(s, cancellation))).Where(f => f.Item2 is not null).Select(f => (f.s, f.Item2!))];
        if (files.Length == 0)
        {
            return [];
        }

        string path = Path.Combine(output.Stage, FileName);
        string key = Key(files);
        if (Kept.Read(path) is { } kept && kept.Key == key)
        {
            return kept.Codes;
        }

        var serials = new DatedSerials();
        var reader = new DatedSerialReader(settings, given, serials);
        foreach ((SourceFile source, ContentScan scan) in files)
        {
            reader.Read(source, scan, cancellation);
        }

        IReadOnlyList<LearnedDateCode> codes = DateCodeLearner.Learn(serials.All);
        Directory.CreateDirectory(output.Stage);
        new Kept(key, codes).Write(path);
        return codes;
    }

    // Null: the file cannot be read; staging says why.
    private ContentScan? Scan(SourceFile source, CancellationToken cancellation)
    {
        try
        {
            return ContentScan.Read(source.File, settings.Limits, cancellation);
        }
        catch (BadInputException)
        {
            return null;
        }
    }

    private string Key((SourceFile Source, ContentScan Scan)[] files)
    {
        var text = new StringBuilder().Append(Version).Append('\n').Append(given.Fingerprint).Append('\n')
            .Append(settings.DateOrder).Append('\n').Append(settings.NumberStyle).Append('\n').Append(settings.Limits).Append('\n');
        foreach ((SourceFile source, ContentScan scan) in files)
        {
            text.Append(scan.Hash).Append('\n').Append(JsonSerializer.Serialize(source.Map)).Append('\n');
        }

        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())));
    }

    private sealed record Kept(string Key, IReadOnlyList<LearnedDateCode> Codes)
    {
        private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { WriteIndented = true };

        // A file cut short by a kill is learned anew.
        public static Kept? Read(string path)
        {
            try
            {
                return File.Exists(path) ? JsonSerializer.Deserialize<Kept>(File.ReadAllText(path), Json) : null;
            }
            catch (JsonException)
            {
                return null;
            }
        }

        public void Write(string path) => File.WriteAllText(path, JsonSerializer.Serialize(this, Json));
    }
}
