-- One row per source row that could not be read or used.
select source_file, source_line, field, reason_code, message, suggestion from staged_rejects
union all
select source_file, source_line, field, reason_code, message, suggestion from lost_rows
order by source_file, source_line, field
