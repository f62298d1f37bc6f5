-- One row per line of a job that charges for work, travel or a fee: it names no part.
select p.source_order, p.source_line, p.group_no, p.job_id, coalesce(p.description, p.part_raw) as words
from int_numbered_job_parts as p
left join part_names as n on n.description = lower(trim(coalesce(p.description, p.part_raw)))
left join int_charge_numbers as c using (part_key)
where (n.role = 'charge' or (c.part_key is not null and n.likely_component is null))
    -- whatever the owner calls a component is one
    and coalesce(n.description, '') not in (select description from review_components)
