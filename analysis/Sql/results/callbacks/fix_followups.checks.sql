-- One row per repair that is there twice, or whose next call comes before its end.
select job_id, 'repair twice' as fault
from fix_followups
group by job_id
having count(*) > 1
union all
select job_id, 'next call before the repair' as fault
from fix_followups
where next_days < 0 or next_same_days < next_days
