-- One row per part that appears twice on a job, or whose clock runs backwards although it failed again.
select 'twice' as fault, job_id, component
from replacement_spans
group by job_id, component
having count(*) > 1
union all
select 'failed before it was fitted', job_id, component
from replacement_spans
where ending = 'failed_again' and days <= 0
