-- One row per part counted on a van or on the shop's shelf, at its newest count.
select
    v.van,
    v.part_raw,
    p.current_number as part_number,
    r.part_number as fitted_number,
    v.on_hand,
    v.counted_on,
    v.source_file,
    v.source_line
from staged_van_counts as v
anti join int_row_status as f using (source_order, source_line)
left join int_resolved_part_numbers as r on r.supplier = '' and r.raw = v.part_raw and r.typed_key = v.part_key
left join parts as p on p.part_number = r.part_number
order by v.van, v.source_order, v.source_line
