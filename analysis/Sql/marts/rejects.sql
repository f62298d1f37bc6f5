-- One row per source row that could not be read or used, and that nobody has mended.
select source_file, source_line, field, reason_code, message, suggestion
from rejected_rows
anti join mended_rows using (source_order, source_line)
union all
select source_file, source_line, field, reason_code, message, suggestion
from int_orphan_part_lines
anti join int_mended_part_lines using (source_order, source_line)
order by source_file, source_line, field
