-- One row per source row that is not one row.
select source_order, source_line
from int_named_job_lines
group by source_order, source_line
having count(*) > 1 or source_order is null or source_line is null
