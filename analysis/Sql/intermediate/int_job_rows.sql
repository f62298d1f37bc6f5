-- One row per job: the row that speaks for it, with its place in the sources as one number.
-- of a job told on several rows, one part each, the first speaks for the job
-- materialize: view
select (j.source_order::bigint << 32 | j.source_line) as place, j.*
from staged_jobs as j
anti join int_row_status as f using (source_order, source_line)
