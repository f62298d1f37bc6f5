-- One row per answer that could not be followed: its file and row, and why.
select source_file, source_line, 'answer not understood: ' || message as note
from int_answer_faults
order by source_file, source_line
