-- One row per job: the source row that represents it. Its position in the sources is one number, place.
-- Of a job written on several rows, one part each, the first row represents the job.
-- materialize: view
select (j.source_order::bigint << 32 | j.source_line) as place, j.*
from int_numbered_jobs as j
anti join int_row_status as f using (source_order, source_line)
