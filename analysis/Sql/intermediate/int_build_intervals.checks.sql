-- One row per interval that is missing, runs backwards or is counted wrongly.
select place, job_id, made_from, made_to, candidates
from int_build_intervals
where place is null
    or made_from is null
    or made_to is null
    or made_from > made_to
    or candidates < 1
