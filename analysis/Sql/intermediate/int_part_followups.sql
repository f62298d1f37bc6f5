-- One row per component fitted on a finished repair of a known appliance: when the same component was fitted on it
-- again.
with replaced_again as (
    select f.job_id, f.component, min(n.fitted_on) as again_on
    from int_fitted_components as f
    join int_fitted_components as n
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
from int_fitted_components as f
cross join int_log_window as log
left join replaced_again as a
    on f.job_id = a.job_id and f.component = a.component
left join units as u
    on f.unit_id = u.unit_id
order by f.fitted_on, f.job_id, f.component
