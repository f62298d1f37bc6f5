-- One row per line that stands twice, or that has no words.
select source_order, source_line, group_no
from int_charge_lines
group by source_order, source_line, group_no
having count(*) > 1 or bool_or(words is null)
