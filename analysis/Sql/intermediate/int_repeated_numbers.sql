-- One row per hash of a job number that stands on more than one row.
select hash(job_id) as mark
from staged_jobs
group by hash(job_id)
having count(*) > 1
