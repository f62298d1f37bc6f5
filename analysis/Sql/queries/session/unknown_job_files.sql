-- One row per file with part lines whose job is in no log: how many lines, and a mark that changes with them.
select source_order, count(*) as lines, bit_xor(hash(source_line, message))::varchar as mark
from int_orphan_part_lines
group by source_order
order by source_order
