-- One row per file: its books.
select source_file, kind, rows_read, loaded, duplicate, replaced, rejected
from loads
order by source_file, kind
