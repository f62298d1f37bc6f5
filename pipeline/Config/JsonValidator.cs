using System.Text.Json;
using PartsSignal.Analysis.CrossReference;

namespace PartsSignal.Pipeline.Config;

/// <summary>One object of a JSON file, read key by key; what is wrong is gathered with its path, not thrown.</summary>
internal sealed class JsonValidator(JsonElement element, string path, List<string> faults)
{
    private readonly HashSet<string> _known = new(StringComparer.Ordinal);

    /// <summary>Path of the object, for example <c>sources[3]</c>; empty: the whole file.</summary>
    public string Path => path;

    /// <summary>Adds a fault at a key.</summary>
    public void Fault(string key, string what) => faults.Add($"shop.json: {At(key)}: {what}");

    /// <summary>Text, or the default.</summary>
    public string? Text(string key, string? otherwise) =>
        Has(key, JsonValueKind.String, "text in quotation marks") is { } value ? value.GetString() : otherwise;

    /// <summary>Text that must be there and not be empty.</summary>
    public string NeededText(string key)
    {
        string? text = Text(key, null);
        if (string.IsNullOrWhiteSpace(text) && !IsWrong(key))
        {
            Fault(key, "is missing.");
        }

        return text ?? "";
    }

    /// <summary>One of several words, or the default.</summary>
    public string? Choice(string key, string? otherwise, IReadOnlyCollection<string> choices)
    {
        string? text = Text(key, otherwise);
        if (text is not null && text != otherwise && !choices.Contains(text))
        {
            Fault(key, $"'{text}' is none of {string.Join(", ", choices)}.");
        }

        return text;
    }

    /// <summary>A number within bounds, or the default.</summary>
    public double Number(string key, double otherwise, double least, double most)
    {
        if (Has(key, JsonValueKind.Number, "a number") is not { } value)
        {
            return otherwise;
        }

        double number = value.GetDouble();
        if (number < least || number > most)
        {
            Fault(key, FormattableString.Invariant($"{number} is not within {least} to {most}."));
        }

        return number;
    }

    /// <summary>A whole number within bounds, or the default.</summary>
    public long Whole(string key, long otherwise, long least, long most)
    {
        double number = Number(key, otherwise, least, most);
        if (number != Math.Truncate(number))
        {
            Fault(key, "must be a whole number.");
            return otherwise;
        }

        return (long)number;
    }

    /// <summary>A day, or null.</summary>
    public DateOnly? Day(string key)
    {
        string? text = Text(key, null);
        if (text is null)
        {
            return null;
        }

        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture, System.Globalization.DateTimeStyles.None, out DateOnly day))
        {
            return day;
        }

        Fault(key, $"'{text}' is no date. Write it as 2026-08-31.");
        return null;
    }

    /// <summary>Texts of an array; a single text counts as an array of one.</summary>
    public IReadOnlyList<string>? Texts(string key)
    {
        if (!Find(key, out JsonElement value))
        {
            return null;
        }

        if (value.ValueKind == JsonValueKind.String)
        {
            return [value.GetString()!];
        }

        if (value.ValueKind != JsonValueKind.Array || value.EnumerateArray().Any(v => v.ValueKind != JsonValueKind.String))
        {
            Fault(key, "must be text or a list of texts.");
            return null;
        }

        return [.. value.EnumerateArray().Select(v => v.GetString()!)];
    }

    /// <summary>Objects of an array.</summary>
    public IEnumerable<JsonValidator> Objects(string key)
    {
        if (Has(key, JsonValueKind.Array, "a list") is not { } list)
        {
            yield break;
        }

        int i = 0;
        foreach (JsonElement item in list.EnumerateArray())
        {
            string at = $"{At(key)}[{i++}]";
            if (item.ValueKind == JsonValueKind.Object)
            {
                yield return new JsonValidator(item, at, faults);
            }
            else
            {
                faults.Add($"shop.json: {at}: must be an object in braces.");
            }
        }
    }

    /// <summary>An object, or null.</summary>
    public JsonValidator? Object(string key) => Has(key, JsonValueKind.Object, "an object in braces") is { } value ? new JsonValidator(value, At(key), faults) : null;

    /// <summary>All keys of this object.</summary>
    public IReadOnlyList<string> Keys => [.. element.EnumerateObject().Select(p => p.Name)];

    /// <summary>Faults for keys that nobody asked for.</summary>
    public void RefuseOthers()
    {
        foreach (string key in Keys.Where(k => !_known.Contains(k)))
        {
            string? near = _known.MinBy(k => StringDistance.OptimalAlignment(k, key, 3)) is { } best && StringDistance.OptimalAlignment(best, key, 3) <= 2 ? best : null;
            Fault(key, near is null ? $"is no known key. Known: {string.Join(", ", _known.Order(StringComparer.Ordinal))}." : $"is no known key. Did you mean '{near}'?");
        }
    }

    private string At(string key) => path.Length == 0 ? key : $"{path}.{key}";

    private bool IsWrong(string key) => element.TryGetProperty(key, out JsonElement value) && value.ValueKind is not (JsonValueKind.String or JsonValueKind.Null);

    private bool Find(string key, out JsonElement value)
    {
        _known.Add(key);
        return element.TryGetProperty(key, out value) && value.ValueKind != JsonValueKind.Null;
    }

    private JsonElement? Has(string key, JsonValueKind kind, string wanted)
    {
        if (!Find(key, out JsonElement value))
        {
            return null;
        }

        if (value.ValueKind == kind)
        {
            return value;
        }

        Fault(key, $"must be {wanted}.");
        return null;
    }
}
