-- One row per supplier's own number and the catalog number it may stand for, with its lookup key.
with single as (
    select part_key, part_number, part_confusable from int_catalog where not collides
),
listed as (
    select s.supplier, s.alias_raw as alias, s.alias_key, c.part_number, 'listed' as basis, s.source_file, s.source_line, s.source_order
    from staged_part_aliases as s
    anti join int_row_status as f using (source_order, source_line)
    -- where two parts share letters and digits, the exact spelling decides
    join int_catalog as c on c.part_key = s.part_key and (not c.collides or upper(c.part_number) = upper(trim(s.part_raw)))
),
-- an order line that carries both numbers says which is whose: one of them is in the catalog, the other is not
paired as (
    select o.supplier, o.part_raw as alias, o.part_key as alias_key, c.part_number, o.source_file, o.source_line, o.source_order
    from staged_part_orders as o
    join single as c on c.part_key = o.other_key
    where o.part_key <> '' and o.part_key not in (select part_key from int_catalog)
    union all
    select o.supplier, o.other_raw, o.other_key, c.part_number, o.source_file, o.source_line, o.source_order
    from staged_part_orders as o
    join single as c on c.part_key = o.part_key
    where o.other_key <> '' and o.other_key not in (select part_key from int_catalog)
),
seen as (
    select
        supplier,
        first(alias order by source_order, source_line) as alias,
        alias_key,
        part_number,
        'order line' as basis,
        first(source_file order by source_order, source_line) as source_file,
        first(source_line order by source_order, source_line) as source_line
    from paired
    anti join listed using (supplier, alias_key)
    group by supplier, alias_key, part_number
),
reviewed as (
    select supplier, typed as alias, typed_key as alias_key, part_number, 'reviewed' as basis, source_file, source_line
    from int_answered_part_numbers
),
together as (
    select supplier, alias, alias_key, part_number, basis, source_file, source_line from listed
    union all
    from seen
    union all
    from reviewed
)
select supplier, alias, alias_key, part_number, basis, source_file, source_line
from together
-- the owner's answer before the list, the list before what order lines suggest
qualify row_number() over (
    partition by supplier, alias_key, part_number
    order by case basis when 'reviewed' then 1 when 'listed' then 2 else 3 end, source_file, source_line
) = 1
order by supplier, alias_key, part_number, basis, source_file, source_line
