-- One row per call with what a trend needs of it: month of the call, month in which its component became known (not
-- before the call, whatever day the log says it was closed), and who and what it was about.
select
    j.job_id,
    (year(j.opened_on) * 12 + month(j.opened_on) - 1)::integer as month,
    case
        when j.main_component is not null and j.closed_on <= log.last_day
            then greatest(year(j.closed_on) * 12 + month(j.closed_on), year(j.opened_on) * 12 + month(j.opened_on)) - 1
    end::integer as known_month,
    coalesce(j.appliance_type, 'unknown') as appliance_type,
    coalesce(j.model_family, 'unknown') as model_family,
    case when j.closed_on <= log.last_day then j.main_component end as component,
    j.technician,
    j.customer_id,
    j.model_number,
    case when j.made_to - j.made_from <= 92 then year(j.made_from) * 12 + month(j.made_from) - 1 end::integer as made_month
from int_failure_calls as j
cross join int_log_window as log
where j.opened_on <= log.last_day
order by j.opened_on, j.job_id
