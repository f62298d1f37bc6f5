-- One row per job whose chances do not add up to 1 or whose count is wrong, and per interval that runs backwards.
select job_id, 'chances' as fault
from build_dates
group by job_id
having abs(sum(weight) - 1) > 1e-9 or count(*) <> min(candidates)
union all
select job_id, 'runs backwards' from build_dates where made_from > made_to
