-- One row per part line of a job of the vans in plan_vans, of all jobs where that is empty; part_number is null where
-- the line does not tell its part.
select
    job_id,
    part_number,
    fitted_number,
    quantity
from told_part_lines()
where not exists (from plan_vans) or job_id in (select job_id from jobs where van in (select van from plan_vans))
order by job_id, line
