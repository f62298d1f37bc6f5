-- One row per job that is still open: the van it is booked for, and what the log says of it so far.
select job_id, van, outcome
from jobs
where coalesce(closing_basis = 'open', closed_on is null)
order by opened_on, job_id
