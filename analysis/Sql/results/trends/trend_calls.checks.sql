-- One row per call that appears twice, or that was known before it came in.
select 'twice' as fault, job_id
from trend_calls
group by job_id
having count(*) > 1
union all
select 'known before it came in', job_id
from trend_calls
where known_month < month
