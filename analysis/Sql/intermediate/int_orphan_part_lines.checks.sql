-- One row per part line that is there twice or lacks its key.
select source_order, source_line, 'is there twice' as fault
from int_orphan_part_lines
group by source_order, source_line
having count(*) > 1
union all
select source_order, source_line, 'has no key'
from int_orphan_part_lines
where source_order is null or source_line is null
