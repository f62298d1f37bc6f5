-- One row per job without a place in the sources, a number, a day or a model spelling.
select place, job_id
from int_job_units
where place is null
    or job_id is null
    or opened_on is null
    or writing is null
