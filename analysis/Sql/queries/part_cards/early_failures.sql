-- One row: of the pieces fitted on known appliances and followed for $days days, how many jobs needed the same component again.
with last_day as (
    select max(day_on) as day_on from (select max(opened_on) as day_on from jobs union all select max(closed_on) from jobs)
),
fitted as (
    select distinct j.unit_id, p.component, j.job_id, coalesce(j.closed_on, j.opened_on) as fitted_on
    from job_parts as p
    join jobs as j using (job_id)
    where p.part_number = $number and j.unit_id is not null
),
followed as (
    select f.*
    from fitted as f
    cross join last_day as l
    where f.fitted_on + $days::integer <= l.day_on
),
failed as (
    select distinct f.job_id
    from followed as f
    join jobs as j on j.unit_id = f.unit_id and j.job_id <> f.job_id
        and j.opened_on >= f.fitted_on and j.opened_on <= f.fitted_on + $days::integer
    left join job_parts as again on again.job_id = j.job_id and again.part_number = $number
    where j.main_component = f.component or again.job_id is not null
)
select (select count(distinct job_id) from followed) as followed, (select count(*) from failed) as failed
