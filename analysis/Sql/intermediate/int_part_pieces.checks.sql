-- One row per piece without a job or a source row, or whose basis contradicts its number.
select job_id, source_file, source_line
from int_part_pieces
where job_id is null
    or source_line is null
    or place < 1
    or (fitted_number is null) <> (basis = 'unresolved')
