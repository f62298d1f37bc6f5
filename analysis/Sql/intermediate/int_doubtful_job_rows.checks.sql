-- One row per source row that is not one row or has no number, place or day.
select source_order, source_line
from int_doubtful_job_rows
group by source_order, source_line
having count(*) > 1
    or source_order is null
    or source_line is null
    or not bool_and(job_number is not null and opened_on is not null)
