-- One row per callback: a call on the same unit for the same complaint within the callback window after a finished
-- repair.
-- materialize: result
select
    f.next_same_job as job_id,
    j.opened_on,
    f.job_id as earlier_job_id,
    f.closed_on as earlier_closed_on,
    f.next_same_days as days_after,
    f.appliance_type,
    f.model_family,
    f.complaint_kind,
    f.technician as earlier_technician,
    f.component as earlier_component,
    j.main_component as component,
    j.main_component = f.component as same_component
from fix_followups as f
join jobs as j
    on f.next_same_job = j.job_id
where f.next_same_days <= getvariable('callback_days')
order by j.opened_on, f.next_same_job, f.job_id
