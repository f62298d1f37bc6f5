-- One row: the newest day in the job log; null when there is no job.
select max(opened_on) as newest from jobs
