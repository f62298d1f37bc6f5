-- One row: the newest day in the job log; null without jobs.
select max(greatest(opened_on, closed_on)) as last_day from jobs
