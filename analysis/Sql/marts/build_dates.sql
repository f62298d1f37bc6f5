-- One row per job and build interval that its appliance's serial may mean, with the chance that it is the right one.
select job_id, unit_id, made_from, made_to, candidates, weight, basis
from int_job_build_dates
order by job_id, made_from
