-- One row per answer without a list, a row or a message.
select list, source_file, source_line, message
from int_answer_faults
where list is null
    or source_line is null
    or message is null
