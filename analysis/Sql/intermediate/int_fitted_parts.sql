-- One row per part line fitted on a finished repair of a known appliance, up to the last day of the log.
-- A job without a closing day is still open: whether its part stays is not known yet.
select
    p.job_id,
    p.line,
    j.unit_id,
    p.component,
    p.part_number,
    p.fitted_number,
    p.supplier,
    p.component = j.main_component as is_cause,
    j.closed_on as fitted_on,
    coalesce(j.appliance_type, 'unknown') as appliance_type,
    coalesce(j.model_family, 'unknown') as model_family
from job_parts as p
join jobs as j using (job_id)
cross join int_log_window as log
where j.unit_id is not null
    and j.closed_on <= log.last_day
    and j.outcome in ('fixed_with_part', 'fixed')
    and p.quantity > 0
