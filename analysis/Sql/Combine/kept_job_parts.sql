-- One row per part line that stays: with its job row, or as a line of its own whose job is in the log.
select p.*
from staged_job_parts as p
join row_fates as f using (source_order, source_line)
where f.fate = 'loaded'
    and (
        (p.with_job_row and f.kind = 'jobs')
        or (not p.with_job_row and f.kind = 'job_parts' and p.job_id in (select job_id from staged_jobs))
    )
