-- One row per job without a place in the sources or without lines.
select place, lines
from int_job_components
where place is null
    or lines is null
    or lines < 0
