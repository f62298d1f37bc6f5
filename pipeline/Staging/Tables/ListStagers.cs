using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Staging.Tables;

/// <summary>A kind of file whose fields each stand for themselves.</summary>
internal class ListStager(StageTarget target, string kind) : TableStager(target, kind)
{
    private PlainFields? _plain;

    public override void Stage(MappedRow row)
    {
        // Fields that a derived stager claims are known by the first row.
        _plain ??= Plain();
        int at = Table.At;
        _plain.SetRefusing(row, at);
        Check(row, at);
        if (row.Fault is not null)
        {
            return;
        }

        _plain.SetOthers(row, at);
        if (row.Fault is null)
        {
            EndRow(row, RowDigest(row));
        }
    }

    /// <summary>What the kind asks of a row beside its fields; stages what it claimed.</summary>
    protected virtual void Check(MappedRow row, int at)
    {
    }
}

/// <summary>Order lines.</summary>
internal sealed class PartOrdersStager : ListStager
{
    private readonly MappedField _part;
    private readonly MappedField _other;
    private readonly MappedField _description;
    private readonly MappedField _quantity;
    private readonly MappedField _returnedQuantity;
    private readonly MappedField _returned;
    private readonly MappedField _returnedOn;
    private readonly ValueColumn<int> _piecesReturned;
    private readonly MappedField _orderId;
    private readonly TextColumn _orderIds;

    public PartOrdersStager(StageTarget target)
        : base(target, "part_orders")
    {
        (_part, _other, _description) = (target.Map.Field("part"), target.Map.Field("other_part"), target.Map.Field("description"));
        _quantity = target.Map.Field("quantity");
        (_returnedQuantity, _returned, _returnedOn) = (Claim("returned_quantity"), Claim("returned"), Claim("returned_on"));
        _piecesReturned = Table.Value<int>("returned_quantity");
        (_orderId, _orderIds) = (Claim("order_id"), Table.Text("order_id"));
    }

    protected override void Check(MappedRow row, int at)
    {
        _piecesReturned.Set(at, PiecesReturned(row));
        _orderIds.Set(at, OrderId(row));
        if (row.IsBlank(_part) && row.IsBlank(_other) && row.IsBlank(_description))
        {
            row.Fail(_part, ReasonCode.Missing, "The row names neither a part number nor a description.", "Fill in the part number.");
        }
    }

    // A line without a number: its own text is its number, so that it is the same order in every export.
    private string? OrderId(MappedRow row) => IsNumbered(_orderId, row) ? Target.Personal.Id(row.Needed(_orderId)) : "row-" + Target.Tools.Key.Identify(RowDigest(row));

    // Null: nothing tells what was sent back, which is not the same as nothing.
    private int? PiecesReturned(MappedRow row)
    {
        if (!_returnedQuantity.IsMapped && !_returned.IsMapped && !_returnedOn.IsMapped)
        {
            return null;
        }

        int? pieces = row.Quantity(_returnedQuantity);
        bool? flag = row.Flag(_returned);
        DateOnly? day = row.Day(_returnedOn, lesser: true);
        bool isUnread = (flag is null && !row.IsBlank(_returned)) || (day is null && !row.IsBlank(_returnedOn));
        return pieces ?? (flag ?? day is not null ? row.Quantity(_quantity) ?? 1 : isUnread ? null : 0);
    }
}

/// <summary>Counts of vans, or of the shop's shelf where the file names no van at all.</summary>
internal sealed class VanCountsStager(StageTarget target) : ListStager(target, "van_counts")
{
    private readonly MappedField _van = target.Map.Field("van");

    protected override void Check(MappedRow row, int at)
    {
        if (_van.IsMapped && row.IsBlank(_van))
        {
            row.Missing(_van);
        }
    }
}

/// <summary>Lists of which part fits which model or family.</summary>
internal sealed class FitmentsStager(StageTarget target) : ListStager(target, "fitments")
{
    private readonly MappedField _model = target.Map.Field("model");
    private readonly MappedField _family = target.Map.Field("model_family");

    protected override void Check(MappedRow row, int at)
    {
        if (row.IsBlank(_model) && row.IsBlank(_family))
        {
            row.Fail(_model, ReasonCode.Missing, "The row names neither a model nor a family.", "Fill in one of them.");
        }
    }
}

/// <summary>Price lists: a component that is not given is the one that the description names.</summary>
internal sealed class PartsStager : ListStager
{
    private readonly MappedField _component;
    private readonly MappedField _description;
    private readonly TextColumn _components;

    public PartsStager(StageTarget target)
        : base(target, "parts")
    {
        _component = Claim("component");
        _description = target.Map.Field("description");
        _components = Table.Text("component");
    }

    protected override void Check(MappedRow row, int at) => _components.Set(at, Component(row));

    // A name of several words is a description under another header: the tables may know it.
    private string? Component(MappedRow row)
    {
        PersonalCells personal = Target.Personal;
        ComponentClassifier components = Target.Tools.Words.Components.For(personal.Words.Languages);
        string? described = components.Component(personal.Text(row.Word(_description)));
        string? typed = row.Word(_component);
        bool isPhrase = typed?.Contains(' ', StringComparison.Ordinal) ?? false;
        string? name = isPhrase && personal.Text(typed) is { } text && !text.Contains('[', StringComparison.Ordinal) ? text : personal.Word(row, _component, typed);
        return name is null ? described
            : !isPhrase || Target.Tools.Words.Components.IsName(Plain(name)) ? Plain(name)
            : components.Component(name) ?? described ?? PartPhrase.Parse(name).Name ?? Plain(name);
    }

    private static string Plain(string text) => text.ToLowerInvariant().Replace(' ', '_');
}

/// <summary>Lists of old numbers and what replaces them.</summary>
internal sealed class SupersessionsStager : ListStager
{
    private readonly MappedField _kind;
    private readonly MappedField _new;
    private readonly TextColumn _kinds;

    public SupersessionsStager(StageTarget target)
        : base(target, "supersessions")
    {
        _kind = Claim("kind");
        _new = target.Map.Field("new_part");
        _kinds = Table.Text("kind");
    }

    protected override void Check(MappedRow row, int at)
    {
        bool replaced = !row.IsBlank(_new);
        string? kind = SupersessionKindText.Read(row.Span(_kind), replaced);
        if (kind is null)
        {
            row.Skip(_kind, ReasonCode.UnknownWord);
            kind = replaced ? "replaces" : "no_longer_made";
        }

        if (kind != "no_longer_made" && !replaced)
        {
            row.Missing(_new);
        }

        _kinds.Set(at, kind);
    }
}

/// <summary>Registers of appliances.</summary>
internal sealed class UnitsStager : ListStager
{
    private readonly ApplianceFields _appliance;
    private readonly MappedField _installed;

    public UnitsStager(StageTarget target)
        : base(target, "units")
    {
        _appliance = new ApplianceFields(Claim, Table, target);
        _installed = target.Map.Field("installed_on");
    }

    protected override void Check(MappedRow row, int at)
    {
        _appliance.Set(row, at);
        if (_appliance.IsNobody)
        {
            row.Fail(_installed, ReasonCode.Missing, "The row names neither serial, model nor place.", "Fill in the serial or the model.");
        }
    }
}
