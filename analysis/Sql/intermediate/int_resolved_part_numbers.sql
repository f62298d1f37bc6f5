-- One row per typed part number, and supplier if a supplier typed it, that stands for exactly one catalog number.
with typed_rows as (
    select '' as supplier, part_raw as raw, part_key as typed_key from int_job_part_rows
    union all select '', part_raw, part_key from staged_van_counts
    union all select '', part_raw, part_key from staged_fitments
    union all select coalesce(supplier, ''), part_raw, part_key from staged_parts
    union all select supplier, part_raw, part_key from staged_part_orders
    union all select supplier, other_raw, other_key from staged_part_orders
),
typed as (
    select distinct supplier, raw, typed_key, upper(trim(raw)) as writing, translate(typed_key, 'OIL', '011') as typed_confusable
    from typed_rows
    where typed_key <> ''
),
catalog_keys as (
    select part_number, part_key, part_confusable, collides, upper(trim(part_number)) as writing from int_catalog
),
own_keys as (
    select *, upper(trim(alias)) as writing, translate(alias_key, 'OIL', '011') as alias_confusable from int_part_aliases
),
candidates as (
    -- where two parts share letters and digits, a number spelled exactly as one of them means that one
    select t.supplier, t.raw, t.typed_key, c.part_number, 0 as place, 'exact' as basis
    from typed as t
    join catalog_keys as c on c.part_key = t.typed_key and c.writing = t.writing
    where c.collides
    union all
    select t.supplier, t.raw, t.typed_key, a.part_number, 1, 'alias'
    from typed as t
    join own_keys as a on a.alias_key = t.typed_key
    where a.basis = 'reviewed' and a.supplier in ('', t.supplier)
    union all
    select t.supplier, t.raw, t.typed_key, c.part_number, 2, 'exact'
    from typed as t
    join catalog_keys as c on c.part_key = t.typed_key and c.writing = t.writing
    union all
    select t.supplier, t.raw, t.typed_key, a.part_number, 3, 'alias'
    from typed as t
    join own_keys as a on a.alias_key = t.typed_key and a.supplier = t.supplier and a.writing = t.writing
    union all
    select t.supplier, t.raw, t.typed_key, c.part_number, 4, 'compact'
    from typed as t
    join catalog_keys as c on c.part_key = t.typed_key
    union all
    select t.supplier, t.raw, t.typed_key, a.part_number, 5, 'alias'
    from typed as t
    join own_keys as a on a.alias_key = t.typed_key and a.supplier = t.supplier
    union all
    select t.supplier, t.raw, t.typed_key, a.part_number, 6, 'alias'
    from typed as t
    join own_keys as a on a.alias_key = t.typed_key
    union all
    select t.supplier, t.raw, t.typed_key, c.part_number, 7, 'confusable'
    from typed as t
    join catalog_keys as c on c.part_confusable = t.typed_confusable
    union all
    select t.supplier, t.raw, t.typed_key, a.part_number, 7, 'confusable'
    from typed as t
    join own_keys as a on a.alias_confusable = t.typed_confusable
),
closest as (
    select * from candidates
    qualify place = min(place) over (partition by supplier, raw, typed_key)
),
judged as (
    select
        k.supplier,
        k.raw,
        k.typed_key,
        min(k.part_number) as part_number,
        min(k.basis) as basis,
        count(distinct coalesce(n.current_number, k.part_number)) as meanings
    from closest as k
    left join int_current_numbers as n on n.old_number = k.part_number and n.place = 1
    group by k.supplier, k.raw, k.typed_key
)
select supplier, raw, typed_key, part_number, basis
from judged
where meanings = 1
order by supplier, typed_key, raw
