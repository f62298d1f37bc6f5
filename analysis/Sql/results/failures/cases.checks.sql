-- One row per case that appears twice or holds no call, and one where the cases do not hold every failure call of the log
-- once.
select 'twice' as fault, job_id, count(*) as calls
from cases
group by job_id
having count(*) > 1 or min(calls) < 1
union all
select 'calls do not add up', null, counted.calls - known.calls
from (select coalesce(sum(calls), 0) as calls from cases) as counted
cross join (select count(*) as calls from int_failure_calls where opened_on <= (select last_day from int_log_window)) as known
where counted.calls <> known.calls
