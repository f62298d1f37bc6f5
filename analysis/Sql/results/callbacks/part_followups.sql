-- One row per component replaced on a finished job of a known unit: when the same component was replaced on it again.
with log as (
    select coalesce(getvariable('as_of')::date, max(opened_on)) as last_day
    from jobs
),

fitted as (
    select
        p.job_id,
        j.unit_id,
        p.component,
        coalesce(min(p.supplier), 'unknown') as supplier,
        min(j.closed_on) as fitted_on,
        coalesce(min(j.appliance_type), 'unknown') as appliance_type,
        coalesce(min(j.model_family), 'unknown') as model_family
    from job_parts as p
    inner join jobs as j using (job_id)
    cross join log
    where j.unit_id is not null
        and p.component is not null
        and j.closed_on <= log.last_day
        and j.outcome in ('fixed_with_part', 'fixed')
    group by p.job_id, j.unit_id, p.component
),

replaced_again as (
    select f.job_id, f.component, min(n.fitted_on) as again_on
    from fitted as f
    inner join fitted as n
        on f.unit_id = n.unit_id
        and f.component = n.component
        and f.job_id <> n.job_id
        and n.fitted_on > f.fitted_on
    group by f.job_id, f.component
)

select
    f.job_id,
    f.unit_id,
    f.component,
    f.supplier,
    f.fitted_on,
    f.appliance_type,
    f.model_family,
    greatest(0, least(log.last_day, u.removed_on) - f.fitted_on)::integer as followed_days,
    (a.again_on - f.fitted_on)::integer as again_days
from fitted as f
cross join log
left join replaced_again as a
    on f.job_id = a.job_id and f.component = a.component
left join units as u
    on f.unit_id = u.unit_id
order by f.fitted_on, f.job_id, f.component
