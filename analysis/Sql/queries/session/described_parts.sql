-- One row per description of a part in the staged files, with the number of lines that have it.
select description, count(*) as times
from (
    select lower(trim(description)) as description from staged_job_parts
    union all
    select lower(trim(description)) from staged_part_orders
    union all
    select lower(trim(description)) from staged_parts
    union all
    select lower(trim(fault_text)) from staged_jobs
)
where description <> ''
group by description
order by description
