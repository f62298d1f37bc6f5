-- One row per appliance type and ordered pair of components fitted on the same job at least three times.
-- materialize: result
with fitted as (
    select distinct jobs.appliance_type, jobs.job_id, job_parts.component
    from job_parts
    join jobs on jobs.job_id = job_parts.job_id
    where coalesce(jobs.visit_reason, 'failure') = 'failure'
        and job_parts.component is not null
        and jobs.appliance_type is not null
        and jobs.closed_on is not null
),
jobs_of_type as (
    select appliance_type, count(distinct job_id) as jobs
    from fitted
    group by appliance_type
),
jobs_of_component as (
    select appliance_type, component, count(*) as jobs
    from fitted
    group by appliance_type, component
),
pairs as (
    select one.appliance_type, one.component, other.component as with_component, count(*) as jobs
    from fitted as one
    join fitted as other on other.job_id = one.job_id and other.component <> one.component
    group by one.appliance_type, one.component, other.component
    having count(*) >= 3
)
select
    pairs.appliance_type,
    pairs.component,
    pairs.with_component,
    jobs_of_type.jobs::bigint as jobs_with_parts,
    own.jobs::bigint as jobs_component,
    other.jobs::bigint as jobs_with_component,
    pairs.jobs::bigint as jobs_both,
    pairs.jobs / own.jobs::double as share,
    pairs.jobs * jobs_of_type.jobs / (own.jobs::double * other.jobs) as lift
from pairs
join jobs_of_type on jobs_of_type.appliance_type = pairs.appliance_type
join jobs_of_component as own on own.appliance_type = pairs.appliance_type and own.component = pairs.component
join jobs_of_component as other on other.appliance_type = pairs.appliance_type and other.component = pairs.with_component
order by pairs.appliance_type, pairs.component, share desc, pairs.with_component
