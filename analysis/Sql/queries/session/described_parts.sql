-- One row per description of a part in the staged files, with the number of lines that have it. Words in place of a part
-- number, as in LABOR-1, and the groups of a price list, may name a charge.
select description, count(*) as times
from (
    select lower(trim(description)) as description from staged_job_parts
    union all
    select lower(trim(part_raw)) from staged_job_parts where description is null and regexp_matches(part_raw, '\pL{4}')
    union all
    select lower(trim(description)) from staged_part_orders
    union all
    select lower(trim(part_raw)) from staged_part_orders where description is null and regexp_matches(part_raw, '\pL{4}')
    union all
    select lower(trim(description)) from staged_parts
    union all
    select replace(component, '_', ' ') from staged_parts where component not in (select component from component_roles)
    union all
    select lower(trim(fault_text)) from staged_jobs
)
where description <> ''
group by description
order by description
