-- One row per job: the true build day of its appliance.
select built_on::date from truth order by job_id
