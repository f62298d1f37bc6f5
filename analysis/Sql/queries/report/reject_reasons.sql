-- One row per reason and field of rejected rows, most first.
select
    reason_code, field, count(*) as rejects,
    min_by(source_file, (source_file, source_line)) as first_file,
    min_by(source_line, (source_file, source_line)) as first_line,
    coalesce(min(suggestion), min_by(message, (source_file, source_line))) as mend
from rejects
group by reason_code, field
order by rejects desc, reason_code, field
