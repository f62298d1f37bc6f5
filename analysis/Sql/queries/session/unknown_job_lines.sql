-- One row per part line of a file whose job is in no log, in the order of the file: the next $lines after a line.
select source_line, field, reason_code, message, suggestion
from int_orphan_part_lines
where source_order = $source_order and source_line > $after
order by source_line
limit $lines
