-- One row per interval that is missing, runs backwards or has a chance outside 0 to 1.
select job_id, made_from, made_to, weight
from int_job_build_dates
where made_from is null
    or made_to is null
    or made_from > made_to
    or weight is null
    or weight <= 0
    or weight > 1 + 1e-9
