-- One row per part line that stays: with its job row, or as a line of its own whose job is in the log.
select p.*
from staged_job_parts as p
anti join (from row_fates where fate <> 'continued') as f using (source_order, source_line)
anti join lost_rows as l using (source_order, source_line)
