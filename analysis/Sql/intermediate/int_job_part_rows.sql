-- One row per part line that counts: it belongs to a job row that is loaded, or stands alone and its job is in the log; it
-- names a part and no charge.
-- materialize: view
select p.*
from int_numbered_job_parts as p
anti join (from int_row_status where status <> 'continued') as f using (source_order, source_line)
anti join int_orphan_part_lines as l using (source_order, source_line)
anti join int_charge_lines as c using (source_order, source_line, group_no)
