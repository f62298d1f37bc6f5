-- One row per arrow old -> new, as listed, in the catalogue's writing.
with kept as (
    select s.*
    from staged_supersessions as s
    join row_fates as f using (source_order, source_line)
    where f.kind = 'supersessions' and f.fate = 'loaded'
)
select
    coalesce(o.part_number, upper(trim(k.old_raw))) as old_number,
    coalesce(n.part_number, upper(trim(k.new_raw))) as new_number,
    k.effective_on,
    k.kind,
    k.quantity,
    k.source_file,
    k.source_line
from kept as k
left join catalogue as o on o.part_key = k.old_key and (not o.collides or upper(o.part_number) = upper(trim(k.old_raw)))
left join catalogue as n on n.part_key = k.new_key and (not n.collides or upper(n.part_number) = upper(trim(k.new_raw)))
order by old_number, new_number, k.effective_on, k.source_file, k.source_line
