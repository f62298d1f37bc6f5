-- One row per job row of every file, with the number that the job goes by.
-- materialize: view
select j.* replace (coalesce(n.job_id, j.job_id) as job_id), j.job_id as job_number
from staged_jobs as j
left join int_job_numbers as n using (source_order, source_line)
