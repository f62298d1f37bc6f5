-- One row per component at fault and fitted on a finished repair of a known unit: when the same component was at fault on
-- it again. Fitting it once more along with another part is no failure.
with failed_again as (
    select f.job_id, f.component, min(j.opened_on) as again_on
    from int_fitted_components as f
    cross join int_log_window as log
    join int_failure_calls as j
        on f.unit_id = j.unit_id
        and j.main_component = f.component
        and j.job_id <> f.job_id
        and j.opened_on > f.fitted_on
        and j.closed_on <= log.last_day
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
left join failed_again as a
    on f.job_id = a.job_id and f.component = a.component
left join units as u
    on f.unit_id = u.unit_id
order by f.fitted_on, f.job_id, f.component
