-- One row per part line that is there twice or that no load lost.
select source_order, source_line, 'is there twice' as fault
from int_mended_part_lines
group by source_order, source_line
having count(*) > 1
union all
select source_order, source_line, 'is not lost'
from int_mended_part_lines
anti join int_orphan_part_lines using (source_order, source_line)
