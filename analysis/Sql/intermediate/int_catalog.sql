-- One row per part number on any list: price lists, supersessions, fitments, aliases, and numbers the owner called new.
-- Without a price list it also holds the numbers seen in orders, jobs and van counts.
with own_numbers as (
    select supplier, alias_key, min(part_key) as part_key
    from staged_part_aliases
    group by supplier, alias_key
),
listed as (
    select p.part_raw, p.part_key, 1 as place, p.source_order, p.source_file, p.source_line
    from staged_parts as p
    anti join int_row_status as f using (source_order, source_line)
    anti join own_numbers as o on o.supplier = p.supplier and o.alias_key = p.part_key
    union all
    select old_raw, old_key, 2, source_order, source_file, source_line from staged_supersessions
    union all
    select new_raw, new_key, 2, source_order, source_file, source_line from staged_supersessions where new_key is not null
    union all
    select part_raw, part_key, 3, source_order, source_file, source_line from staged_part_aliases
    union all
    select part_raw, part_key, 4, source_order, source_file, source_line from staged_fitments
    union all
    select typed, typed_key, 5, 0, source_file, source_line from review_part_numbers where answer_key is null
    union all
    select part_raw, part_key, 6, source_order, source_file, source_line from int_seen_part_numbers
),
-- two writings of one key in the same list are two parts; in different lists they are one, written anew
writings as (
    select part_key, max(n) > 1 as collides
    from (
        select part_key, source_order, count(distinct upper(trim(part_raw))) as n
        from listed
        where place = 1
        group by part_key, source_order
    )
    group by part_key
),
named as (
    select
        l.*,
        coalesce(w.collides, false) as collides,
        case when w.collides then upper(trim(l.part_raw)) else '' end as writing
    from listed as l
    left join writings as w using (part_key)
),
numbers as (
    select
        part_key,
        writing,
        bool_or(collides) as collides,
        first(trim(part_raw) order by place, source_order desc, source_line) as part_number,
        min(place) as place,
        first(source_file order by place, source_order desc, source_line) as source_file,
        first(source_line order by place, source_order desc, source_line) as source_line
    from named
    where part_key <> '' and (not collides or place = 1)
    group by part_key, writing
)
select
    part_number,
    part_key,
    translate(part_key, 'OIL', '011') as part_confusable,
    collides,
    case place when 5 then 'reviewed' when 6 then 'seen' else 'listed' end as basis,
    source_file,
    source_line
from numbers
order by part_number, part_key
