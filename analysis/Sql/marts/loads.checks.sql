-- One row per file whose rows do not add up (read = loaded + duplicate + replaced + rejected) or of which a count is below zero.
select source_file, rows_read, loaded, duplicate, replaced, rejected
from loads
where rows_read <> loaded + duplicate + replaced + rejected or least(loaded, duplicate, replaced, rejected) < 0
