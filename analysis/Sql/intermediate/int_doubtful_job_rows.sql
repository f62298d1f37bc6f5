-- One row per job row whose number stands on rows that differ in day or unit: its number may not tell the job by itself.
with doubtful as (
    select job_id
    from staged_jobs
    where hash(job_id) in (from int_repeated_numbers)
    group by job_id
    having min(opened_on) < max(opened_on)
        or min(serial_key) < max(serial_key)
        or min(place_key) < max(place_key)
        or min(model_key) < max(model_key)
        or min(appliance_type) < max(appliance_type)
)
select
    job_id as job_number,
    source_order,
    source_file,
    source_line,
    opened_on,
    technician,
    serial_key,
    place_key,
    model_key,
    appliance_type,
    -- a few common words prove nothing
    case when length(complaint_text) >= 20 then complaint_text end as complaint_text,
    updated_on
from staged_jobs
semi join doubtful using (job_id)
