using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace PartsSignal.Pipeline.Bench;

/// <summary>
/// Refused rows that were mended or left out. They stay settled when the same file is read again; kept in
/// <c>settled-rows.txt</c> of the shop's folder as hashes, so that it holds nothing of what the rows say.
/// </summary>
/// <param name="folder">Folder of the shop.</param>
internal sealed class SettledRows(string folder)
{
    private readonly string _path = Path.Combine(folder, "settled-rows.txt");

    /// <summary>Key of a row.</summary>
    /// <param name="rejectFile">Name of its reject file.</param>
    /// <param name="raw">The row as typed.</param>
    /// <param name="times">How often the file has had such a row so far, this one among them; 1 or more.</param>
    public static string KeyOf(string rejectFile, string raw, int times) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{rejectFile}\n{raw}{(times == 1 ? "" : $"\n{times}")}"))));

    /// <summary>Keys of all settled rows.</summary>
    public IReadOnlySet<string> Keys => File.Exists(_path) ? File.ReadLines(_path).Where(l => l.Length > 0).ToHashSet(StringComparer.Ordinal) : new HashSet<string>(StringComparer.Ordinal);

    /// <summary>Adds rows.</summary>
    public void Add(IEnumerable<string> keys)
    {
        string text = string.Concat(Keys.Union(keys).Order(StringComparer.Ordinal).Select(k => k + "\n"));
        File.WriteAllText(_path + ".part", text);
        File.Move(_path + ".part", _path, overwrite: true);
    }
}
