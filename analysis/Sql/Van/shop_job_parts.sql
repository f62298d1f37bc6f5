-- One row per part line of a job; part_number is null where it could not be resolved.
select
    job_id,
    part_number,
    coalesce(fitted_number, part_number) as fitted_number,
    quantity
from job_parts
order by job_id, line
