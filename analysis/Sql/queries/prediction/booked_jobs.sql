-- One row per job that is still open: the van it is booked for, what the log says of it so far, whether somebody has been
-- there, and since when a part is on order for it.
with ordered as (
    select job_id, min(ordered_on) as part_ordered_on
    from part_orders
    where job_id is not null and quantity > coalesce(returned_quantity, 0)
    group by job_id
)
select
    jobs.job_id,
    jobs.van,
    jobs.outcome,
    coalesce(jobs.visits, 0) > 0
        or coalesce(jobs.labour_minutes, 0) > 0
        or exists (from job_parts where job_parts.job_id = jobs.job_id) as is_visited,
    ordered.part_ordered_on
from jobs
left join ordered on ordered.job_id = jobs.job_id
where coalesce(jobs.closing_basis = 'open', jobs.closed_on is null)
order by jobs.opened_on, jobs.job_id
