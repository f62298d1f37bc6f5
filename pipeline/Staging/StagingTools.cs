using PartsSignal.Analysis.CrossReference;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Staging;

/// <summary>Reads a serial into build dates.</summary>
/// <param name="brand">Brand as typed, or null if unknown.</param>
/// <param name="serial">Serial as typed.</param>
internal delegate SerialReading SerialReader(string? brand, ReadOnlySpan<char> serial);

/// <summary>What a serial says.</summary>
/// <param name="Candidates">Build intervals, <c>from/to;from/to</c> as ISO days, or null if no rule applies.</param>
/// <param name="Fault">Why the serial breaks its brand's rule, or null if it does not.</param>
internal readonly record struct SerialReading(string? Candidates, string? Fault);

/// <summary>What the staging of every kind uses.</summary>
/// <param name="Key">Turns personal data into identifiers.</param>
/// <param name="Words">Tables of words.</param>
/// <param name="Serials">Reads serials.</param>
/// <param name="SerialRules">Changes when the rules for serials change; part of the key of staged files.</param>
internal sealed record StagingTools(IdentityKey Key, WordSets Words, SerialReader Serials, string SerialRules)
{
    /// <summary>Customers who are left out.</summary>
    public ForgottenCustomers Forgotten { get; init; } = ForgottenCustomers.None;

    /// <summary>Tools for a shop: the key from the output folder, the tables beside <c>shop.json</c> before the shipped ones.</summary>
    /// <param name="output">The output folder; the key is made there on the first run.</param>
    /// <param name="input">Folder of <c>shop.json</c>.</param>
    /// <param name="codes">How serials tell the build date.</param>
    /// <param name="appliances">Names of appliances that the owner assigned to a type.</param>
    public static StagingTools For(OutputFolder output, string input, SerialCodes codes, IReadOnlyList<(string Name, string Type)>? appliances = null)
    {
        var key = IdentityKey.LoadOrMake(output.Key);
        return new StagingTools(key, WordSets.Load(input, appliances), Read, codes.Fingerprint) { Forgotten = ForgottenCustomers.Load(output.Forgotten, key) };

        SerialReading Read(string? brand, ReadOnlySpan<char> serial)
        {
            SerialDateReading reading = codes.Read(brand, serial, SerialCodes.Horizon);
            return new SerialReading(reading.Written, reading.Fault);
        }
    }
}

/// <summary>Where the rows of one file go and what they are made with.</summary>
/// <param name="Files">The staged tables' files.</param>
/// <param name="Map">Its fields.</param>
/// <param name="Tools">Key, words, serials.</param>
/// <param name="Personal">Reads the cells that may hold personal data.</param>
/// <param name="Habits">What the file's first rows show of all of them.</param>
internal sealed record StageTarget(StagedTableFiles Files, FieldMap Map, StagingTools Tools, PersonalCells Personal, RowHabits Habits);
