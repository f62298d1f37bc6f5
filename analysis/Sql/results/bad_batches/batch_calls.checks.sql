-- One row per case that appears twice or was called for well before its unit was built.
select job_id
from batch_calls
group by job_id
having count(*) > 1 or min(month - made_month) < -2
