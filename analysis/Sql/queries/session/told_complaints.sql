-- One row: the calls with a complaint.
select count(*)
from staged_jobs
where trim(complaint_text) <> ''
