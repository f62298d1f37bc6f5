-- One row per piece of a part line that counts, with its current part number and the day it was fitted.
-- Made apart from what follows: this joins, that sorts, and both at once would need twice the memory.
with numbered as (
    select p.*, r.part_number as fitted_number, coalesce(r.basis, 'unresolved') as basis
    from int_job_part_rows as p
    left join int_resolved_part_numbers as r on r.supplier = '' and r.raw = p.part_raw and r.typed_key = p.part_key
)
select
    n.job_id,
    n.part_raw,
    n.part_key,
    n.description,
    n.component,
    n.basis,
    n.fitted_number,
    n.from_van,
    n.supplier,
    n.unit_price,
    n.group_no,
    n.source_order,
    n.source_file,
    n.source_line,
    coalesce(c.current_number, n.fitted_number) as current_number,
    coalesce(c.place, 1) as place,
    case when c.via = 'kit_part' then n.quantity * c.quantity else n.quantity end as pieces,
    coalesce(j.closed_on, j.opened_on) as fitted_on,
    j.appliance_type
from numbered as n
left join int_current_numbers as c on c.old_number = n.fitted_number and (c.place = 1 or c.via = 'kit_part')
left join int_job_rows as j on j.job_id = n.job_id
