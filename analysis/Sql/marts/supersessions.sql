-- One row per arrow old -> new, as listed, in the catalog's writing.
with kept as (
    select s.*, upper(trim(s.old_raw)) as old_writing, upper(trim(s.new_raw)) as new_writing
    from staged_supersessions as s
    anti join int_row_status as f using (source_order, source_line)
),
single as (
    select part_key, part_number from int_catalog where not collides
),
-- of two parts that share the letters and digits the exact writing is meant
colliding as (
    select part_key, part_number, upper(part_number) as writing from int_catalog where collides
)
select
    coalesce(o.part_number, oc.part_number, k.old_writing) as old_number,
    coalesce(n.part_number, nc.part_number, k.new_writing) as new_number,
    k.effective_on,
    k.kind,
    k.quantity,
    k.source_file,
    k.source_line
from kept as k
left join single as o on o.part_key = k.old_key
left join single as n on n.part_key = k.new_key
left join colliding as oc on oc.part_key = k.old_key and oc.writing = k.old_writing
left join colliding as nc on nc.part_key = k.new_key and nc.writing = k.new_writing
order by old_number, new_number, k.effective_on, k.source_file, k.source_line
