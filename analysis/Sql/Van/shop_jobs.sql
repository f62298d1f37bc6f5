-- One row per job: when it came, when it was settled, which van served it and how it ended.
select
    job_id,
    van,
    opened_on,
    closed_on,
    appliance_type,
    model_family,
    outcome
from jobs
order by opened_on, job_id
