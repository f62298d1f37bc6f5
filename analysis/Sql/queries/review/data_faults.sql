-- One row per contradiction in the data, with the row that made it.
select fault_kind, subject, message, source_file, source_line
from data_faults
order by fault_kind, subject, source_file, source_line, message
