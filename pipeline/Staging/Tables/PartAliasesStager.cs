using PartsSignal.Analysis.CrossReference;

namespace PartsSignal.Pipeline.Staging.Tables;

/// <summary>Lists of suppliers' own numbers.</summary>
internal sealed class PartAliasesStager : TableStager
{
    private const string UnknownSupplier = "unknown";
    private readonly MappedField _supplier, _alias, _part;
    private readonly TextColumn _suppliers, _aliases, _aliasKeys, _parts, _partKeys;

    public PartAliasesStager(StageTarget target)
        : base(target, "staged_part_aliases")
    {
        (_supplier, _alias, _part) = (target.Map.Field("supplier"), target.Map.Field("alias"), target.Map.Field("part"));
        (_suppliers, _aliases, _aliasKeys, _parts, _partKeys) =
            (Table.Text("supplier"), Table.Text("alias_raw"), Table.Text("alias_key"), Table.Text("part_raw"), Table.Text("part_key"));
    }

    public override void Stage(MappedRow row)
    {
        string? alias = row.Code(_alias);
        string? part = row.Code(_part);
        if (alias is null)
        {
            row.Missing(_alias);
        }

        if (part is null)
        {
            row.Missing(_part);
        }

        if (row.Fault is not null)
        {
            return;
        }

        int at = Table.At;
        _suppliers.Set(at, Target.Map.Supplier ?? row.Word(_supplier) ?? UnknownSupplier);
        _aliases.Set(at, alias);
        _aliasKeys.Set(at, CompactKey.Of(alias));
        _parts.Set(at, part);
        _partKeys.Set(at, CompactKey.Of(part));
        EndRow(row, RowDigest(row));
    }
}
