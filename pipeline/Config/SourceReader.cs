using PartsSignal.Analysis.CrossReference;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Config;

/// <summary>Reads one entry of <c>sources</c>.</summary>
internal static class SourceReader
{
    /// <summary>Words for the order of dates.</summary>
    public static readonly IReadOnlyList<string> DateOrders = ["auto", "dmy", "mdy", "ymd"];

    /// <summary>Words for the style of numbers.</summary>
    public static readonly IReadOnlyList<string> NumberStyles = ["auto", "point", "comma"];

    /// <summary>The map.</summary>
    public static SourceMap Read(JsonValidator json)
    {
        string kind = json.Choice("kind", null, FieldCatalog.Kinds) ?? "";
        if (kind.Length == 0)
        {
            json.Fault("kind", $"is missing. It is one of {string.Join(", ", FieldCatalog.Kinds)}.");
        }

        var map = new SourceMap
        {
            Files = ReadFiles(json),
            Kind = kind,
            Sheet = json.Text("sheet", null),
            Encoding = ReadEncoding(json),
            Separator = json.Choice("separator", null, [.. TextForm.SeparatorNames]),
            HeaderLine = json.Whole("headerLine", -1, 0, int.MaxValue) is >= 0 and var line ? (int)line : null,
            DateOrder = json.Choice("dateOrder", null, DateOrders),
            NumberStyle = json.Choice("numberStyle", null, NumberStyles),
            JobPrefix = json.Text("jobPrefix", null),
            Supplier = json.Text("supplier", null),
            Fixed = ReadFixed(json, kind),
            Columns = ReadColumns(json, kind),
            PartGroups = ReadGroups(json, kind),
            Words = ReadWords(json, kind),
            Lists = ReadLists(json, kind),
        };
        json.RefuseOthers();
        return map;
    }

    private static string ReadFiles(JsonValidator json) => ReadFile(json, "files");

    private static string ReadFile(JsonValidator json, string key)
    {
        string files = json.NeededText(key).Replace('\\', '/');
        if (Path.IsPathRooted(files) || files.Contains(':') || files.Split('/').Contains(".."))
        {
            json.Fault(key, $"'{files}' leads out of the input folder. Name files relative to it.");
        }

        return files;
    }

    private static string? ReadEncoding(JsonValidator json)
    {
        string? name = json.Text("encoding", null);
        if (name is not null && !TextEncodings.IsKnown(name))
        {
            json.Fault("encoding", $"'{name}' is no known encoding. Leave it out to have it detected, or use utf-8, utf-16, windows-1252, iso-8859-1.");
            return null;
        }

        return name;
    }

    private static Dictionary<string, string> ReadFixed(JsonValidator json, string kind)
    {
        var values = new Dictionary<string, string>(StringComparer.Ordinal);
        if (json.Object("fixed") is { } fixedValues)
        {
            foreach (string field in fixedValues.Keys)
            {
                CheckField(fixedValues, field, kind);
                values[field] = fixedValues.Text(field, "")!;
            }
        }

        return values;
    }

    private static Dictionary<string, IReadOnlyList<string>> ReadColumns(JsonValidator json, string kind)
    {
        var columns = new Dictionary<string, IReadOnlyList<string>>(StringComparer.Ordinal);
        if (json.Object("columns") is { } map)
        {
            foreach (string field in map.Keys)
            {
                CheckField(map, field, kind);
                columns[field] = map.Texts(field) ?? [];
            }
        }

        return columns;
    }

    private static List<IReadOnlyDictionary<string, string>> ReadGroups(JsonValidator json, string kind)
    {
        var groups = new List<IReadOnlyDictionary<string, string>>();
        foreach (JsonValidator group in json.Objects("partGroups"))
        {
            var columns = new Dictionary<string, string>(StringComparer.Ordinal);
            foreach (string field in group.Keys)
            {
                if (kind.Length > 0 && !FieldCatalog.PartLine.Contains(field))
                {
                    group.Fault(field, $"is no field of a part line. Known: {string.Join(", ", FieldCatalog.PartLine)}.");
                }

                columns[field] = group.Text(field, "")!;
            }

            groups.Add(columns);
        }

        if (groups.Count > 0 && kind != "jobs")
        {
            json.Fault("partGroups", "only holds for kind jobs.");
        }

        return groups;
    }

    private static Dictionary<string, IReadOnlyDictionary<string, string>> ReadWords(JsonValidator json, string kind)
    {
        var words = new Dictionary<string, IReadOnlyDictionary<string, string>>(StringComparer.Ordinal);
        if (json.Object("words") is { } all)
        {
            foreach (string field in all.Keys)
            {
                CheckField(all, field, kind);
                if (all.Object(field) is { } table)
                {
                    words[field] = table.Keys.ToDictionary(k => k, k => table.Text(k, "")!, StringComparer.Ordinal);
                }
            }
        }

        return words;
    }

    private static Dictionary<string, CodeList> ReadLists(JsonValidator json, string kind)
    {
        var lists = new Dictionary<string, CodeList>(StringComparer.Ordinal);
        if (json.Object("lists") is { } all)
        {
            foreach (string field in all.Keys)
            {
                CheckField(all, field, kind);
                if (all.Object(field) is { } list)
                {
                    lists[field] = new CodeList(ReadFile(list, "file"), list.Text("sheet", null), list.NeededText("code"), list.NeededText("meaning"), list.Text("column", null));
                    if (lists[field].Column is not null && json.Object("columns")?.Keys.Contains(field) == true)
                    {
                        list.Fault("column", $"gives {field} by another column, but columns names one for it too. Keep one of them.");
                    }

                    list.RefuseOthers();
                }
            }
        }

        return lists;
    }

    private static void CheckField(JsonValidator json, string field, string kind)
    {
        if (FieldCatalog.Names(kind) is { } known && !known.Contains(field))
        {
            string? near = known.Where(k => StringDistance.OptimalAlignment(k, field, 3) <= 2).MinBy(k => StringDistance.OptimalAlignment(k, field, 3));
            json.Fault(field, near is null ? $"is no field of {kind}. Known: {string.Join(", ", known)}." : $"is no field of {kind}. Did you mean '{near}'?");
        }
    }
}
