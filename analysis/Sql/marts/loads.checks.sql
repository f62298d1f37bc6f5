-- One row per file whose rows do not add up: read = loaded + duplicate + replaced + rejected.
select source_file, rows_read, loaded, duplicate, replaced, rejected
from loads
where rows_read <> loaded + duplicate + replaced + rejected
