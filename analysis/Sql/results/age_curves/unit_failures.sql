-- One row per appliance, component and age in days at which that component failed; calls that follow the last repair of
-- the same component within the callback window are marked as the same case.
with failures as (
    select
        j.unit_id,
        j.main_component as component,
        (j.opened_on - u.born_on)::integer as age_days,
        min(j.job_id) as job_id
    from jobs as j
    join unit_ages as u using (unit_id)
    where u.born_on is not null and j.main_component is not null and j.main_component not in ('none', 'other_part')
        and j.opened_on <= (select last_day from int_log_window)
    group by all
),
gaps as (
    select
        *,
        age_days - lag(age_days) over (partition by unit_id, component order by age_days) as days_since_same
    from failures
)
select
    g.unit_id,
    u.basis,
    u.appliance_type,
    u.model_family,
    g.component,
    g.age_days,
    g.job_id,
    coalesce(g.days_since_same <= getvariable('callback_days')::integer, false) as same_case
from gaps as g
join unit_ages as u using (unit_id)
order by g.unit_id, g.component, g.age_days
