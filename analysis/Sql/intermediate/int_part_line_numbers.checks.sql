-- One row per piece without a source row or a line number above zero.
select source_order, source_line, piece, line
from int_part_line_numbers
where source_line is null
    or line is null
    or line < 1
