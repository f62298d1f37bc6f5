-- One row per case that is there twice, or whose chance is zero.
select job_id
from untold_failures
group by job_id
having count(*) > 1 or min(chance) < 0 or max(chance) > 1
