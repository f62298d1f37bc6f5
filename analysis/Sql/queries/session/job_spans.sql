-- One row per span of days with about so many jobs, in order: its first and its last day.
with days as (
    select opened_on, sum(count(*)) over (order by opened_on) as so_far
    from int_job_units
    group by opened_on
)
select
    min(opened_on) as first_day,
    max(opened_on) as last_day
from days
group by (so_far - 1) // $jobs
order by first_day
