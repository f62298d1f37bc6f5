-- One row per callback outside the window, or that names the same earlier repair twice.
select job_id, earlier_job_id, days_after, 'outside the window' as fault
from callbacks
where days_after not between 0 and getvariable('callback_days')
union all
select min(job_id), earlier_job_id, min(days_after), 'repair answered twice' as fault
from callbacks
group by earlier_job_id
having count(*) > 1
