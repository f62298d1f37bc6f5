-- One row per component and supplier ('unknown': the log does not say): parts that were in service on known units within the days asked for, how many days, and how many were replaced again.
with log as (
    from observation
),

fitted as (
    select
        p.job_id,
        j.unit_id,
        p.component,
        coalesce(min(p.supplier), 'unknown') as supplier,
        min(j.closed_on) as fitted_on
    from job_parts as p
    inner join jobs as j using (job_id)
    cross join log
    where j.unit_id is not null
        and p.component is not null
        and j.closed_on <= log.log_last_day
        and j.outcome in ('fixed_with_part', 'fixed')
    group by p.job_id, j.unit_id, p.component
),

followed as (
    select
        *,
        min(fitted_on) over (
            partition by unit_id, component
            order by fitted_on
            range between interval 1 day following and unbounded following
        ) as again_on
    from fitted
),

-- A part serves from the day after it was fitted to the day it is replaced again, the unit is removed, or the log ends.
served as (
    select
        f.component,
        f.supplier,
        greatest(f.fitted_on + 1, log.first_day) as starts_on,
        least(coalesce(f.again_on + 1, log.last_day + 1), coalesce(u.removed_on, log.last_day + 1), log.last_day + 1) as ends_before,
        coalesce(f.again_on between log.first_day and log.last_day and f.again_on < coalesce(u.removed_on, log.last_day + 1), false) as replaced_again
    from followed as f
    cross join log
    left join units as u using (unit_id)
)

select
    component,
    supplier,
    count(*) as parts,
    sum(ends_before - starts_on)::bigint as part_days,
    count(*) filter (where replaced_again) as replaced_again
from served
where starts_on < ends_before
group by component, supplier
order by component, supplier
