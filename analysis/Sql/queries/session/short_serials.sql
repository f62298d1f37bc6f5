-- One row: the jobs whose serial has only one or two characters.
select count(*)
from staged_jobs
where serial_is_short
