-- One row per failure call of the vans in plan_vans, of all such calls where that is empty: when it came, when it was
-- settled, which van served it and how it ended.
select
    job_id,
    van,
    opened_on,
    closed_on,
    appliance_type,
    model_family,
    outcome
from jobs
where coalesce(visit_reason, 'failure') = 'failure'
    and (not exists (from plan_vans) or van in (select van from plan_vans))
order by opened_on, job_id
